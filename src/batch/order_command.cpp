#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/order_book.hpp"
#include "desk/order_changes.hpp"
#include "desk/order_revisions.hpp"
#include "desk/order_words.hpp"
#include "desk/revision_lines.hpp"
#include "desk/wording.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::OrderName name;
  bool open = false;
  int revision = 0;
  std::string item;
  int copy = 0;
  std::optional<int> quantity;
  bool drop = false;
  std::string day;
  std::string why;
  std::string by;
  std::string folder;
};
using Given = std::shared_ptr<Options>;

Json json_of(const desk::OrderView& view, bool with_lines) {
  const auto& header = view.order.header;
  Json made{
      {"order_ref", view.order.ref},
      {"supplier", view.order.supplier.text},
      {"state", desk::stage_key(view.stage)},
      {"revision", view.revision()},
      {"created_on", batch::json_of(view.created_on())},
      {"placed_on", header ? batch::json_of(header->placed_on) : Json(nullptr)},
      {"approved_by", header && header->approved_on ? Json(header->approved_by) : Json{}},
      {"approved_on", header ? batch::json_of(header->approved_on) : Json{}},
      {"cancelled_why", header && header->cancelled_on ? Json(header->cancelled_why) : Json{}},
      {"ordered", view.order.ordered()},
      {"received", view.order.received()},
      {"outstanding", view.order.outstanding()},
      {"expected_on", batch::json_of(view.expected_on)},
      {"overdue_days", view.overdue_days}};
  if (!with_lines) return made;
  Json lines = Json::array();
  for (std::size_t i = 0; i < view.order.lines.size(); ++i) {
    const auto& line = view.order.lines[i];
    Json patients = Json::array();
    for (const auto* piece : view.order.pieces_of(line)) {
      patients.push_back({{"patient", piece->patient.text},
                          {"side", piece->side ? Json(word(*piece->side)) : Json{}},
                          {"needed_on", batch::json_of(piece->needed_on)},
                          {"put_away_on", batch::json_of(piece->put_away_on)}});
    }
    const auto& expected = view.expected[i];
    lines.push_back({{"item_code", line.item.text},
                     {"copy", line.copy},
                     {"state", word(line.state)},
                     {"quantity", line.quantity},
                     {"received_quantity", line.received_quantity},
                     {"outstanding", line.outstanding()},
                     {"unit_cost", batch::json_of(line.unit_cost)},
                     {"on_back_order", expected && expected->on_back_order},
                     {"promised_on", expected ? batch::json_of(expected->promised_on) : Json{}},
                     {"expected_on", expected ? batch::json_of(expected->expected_on) : Json{}},
                     {"overdue_days", expected ? expected->overdue_days : 0},
                     {"patients", std::move(patients)}});
  }
  made["lines"] = std::move(lines);
  return made;
}

/// A revision beside the one before it.
struct Shown {
  const desk::KeptRevision& kept;
  const desk::KeptRevision* before;
  [[nodiscard]] std::vector<desk::RevisionLine> lines() const {
    return desk::revision_lines(kept.lines, before == nullptr ? nullptr : &before->lines);
  }
};

std::vector<Shown> shown(const std::vector<desk::KeptRevision>& revisions) {
  std::vector<Shown> made;
  for (std::size_t i = 0; i < revisions.size(); ++i) {
    made.push_back({revisions[i], i == 0 ? nullptr : &revisions[i - 1]});
  }
  return made;
}

Json json_of(const Shown& revision) {
  const auto& kept = revision.kept;
  Json lines = Json::array();
  Json dropped = Json::array();
  for (const auto& [line, gone, change] : revision.lines()) {
    (gone ? dropped : lines)
        .push_back({{"item_code", line.item.text},
                    {"quantity", line.quantity},
                    {"unit_cost", batch::json_of(line.unit_cost)},
                    {"promised_on", batch::json_of(line.promised_on)},
                    {"for_patients", line.for_patients},
                    {"change", change}});
  }
  return {{"revision", kept.head.revision}, {"made_on", batch::json_of(kept.head.made_on)},
          {"made_by", kept.head.made_by},   {"why", kept.head.why},
          {"lines", std::move(lines)},      {"dropped", std::move(dropped)}};
}

std::string list_words(const desk::OrderView& view) {
  return fmt::format("{}  {}: {}; {} ordered, {} received, {} to come", view.order.ref,
                     view.order.supplier.text, desk::view_stage_words(view), view.order.ordered(),
                     view.order.received(), view.order.outstanding());
}

int list(const Context& context, const Options& options) {
  const Date today = context.today();
  const Clinic clinic = context.clinic_on(today);
  const auto& supplier = options.name.supplier;
  if (!supplier.empty() && ClinicIndex{clinic}.supplier({supplier}) == nullptr) {
    throw WrongUse{fmt::format("There is no supplier '{}'; check the name.", supplier)};
  }
  Json orders = Json::array();
  int shown = 0;
  for (const auto& view : desk::order_views(clinic, today)) {
    if (options.open && !view.is_open()) continue;
    if (!supplier.empty() && view.order.supplier.text != supplier) continue;
    ++shown;
    if (context.json) {
      orders.push_back(json_of(view, false));
    } else {
      std::cout << list_words(view) << '\n';
    }
  }
  if (context.json) {
    print({{"today", batch::json_of(today)}, {"orders", std::move(orders)}});
  } else if (shown == 0) {
    std::cout << "There are no such orders.\n";
  }
  return done;
}

void print_revision(const Shown& revision) {
  const auto& kept = revision.kept;
  std::cout << fmt::format(
      "Revision {}, {}{}: {}\n", kept.head.revision, desk::date_words(kept.head.made_on),
      kept.head.made_by.empty() ? "" : fmt::format(", {}", kept.head.made_by), kept.head.why);
  for (const auto& [line, dropped, change] : revision.lines()) {
    std::cout << fmt::format(
        "  {}  {}{}\n", line.item.text,
        dropped ? std::string{"none"} : desk::count_words(line.quantity, "piece", "pieces"),
        change.empty() ? std::string{} : fmt::format(" ({})", change));
  }
  if (kept.lines.empty()) std::cout << "  Nothing is left of the order.\n";
}

void print_order(const desk::OrderView& view, const std::vector<Shown>& revisions) {
  std::cout << list_words(view) << '\n';
  const auto& header = view.order.header;
  if (header && header->approved_on) {
    std::cout << fmt::format("Approved by {} on {} at {}\n", header->approved_by,
                             desk::date_words(*header->approved_on),
                             desk::approved_sum_words(*header));
  }
  if (header && header->cancelled_on) {
    std::cout << fmt::format("Cancelled on {}: {}\n", desk::date_words(*header->cancelled_on),
                             header->cancelled_why);
  }
  for (std::size_t i = 0; i < view.order.lines.size(); ++i) {
    const auto& line = view.order.lines[i];
    std::cout << fmt::format("  {}  {} ordered, {} received, {} to come; {}; for {}\n",
                             line.item.text, line.quantity, line.received_quantity,
                             line.outstanding(), desk::line_state_words(view, i),
                             desk::line_for_words(view.order, line));
  }
  for (const auto& revision : revisions) print_revision(revision);
}

int show(const Context& context, const Options& options) {
  const Date today = context.today();
  const auto store = context.open(store::OpenMode::existing);
  const auto snapshot = store->read();
  const auto stored = desk::find_order(*snapshot, options.name);
  if (!stored) throw WrongUse{stored.error().sentence};
  const auto kept = desk::revisions_of(*snapshot, stored->order);
  const auto revisions = shown(kept);
  if (options.revision > 0) {
    const auto wanted = std::ranges::find_if(revisions, [&](const Shown& revision) {
      return revision.kept.head.revision == options.revision;
    });
    if (wanted == revisions.end()) {
      throw WrongUse{
          fmt::format("No revision {} of order {} is kept.", options.revision, options.name.ref)};
    }
    context.json ? print(json_of(*wanted)) : print_revision(*wanted);
    return done;
  }
  for (const auto& view : desk::order_views(store::load_clinic(*snapshot), today)) {
    if (view.order.ref != stored->order.ref || view.order.supplier != stored->order.supplier) {
      continue;
    }
    if (context.json) {
      Json made = json_of(view, true);
      made["revisions"] = Json::array();
      for (const auto& revision : revisions) made["revisions"].push_back(json_of(revision));
      print(made);
    } else {
      print_order(view, revisions);
    }
  }
  return done;
}

int tell(const Context& context, const Options& options,
         const Expected<desk::OrderChanged>& changed) {
  if (!changed) throw WrongUse{changed.error().sentence};
  if (context.json) {
    print({{"order_ref", options.name.ref},
           {"revision", changed->revision},
           {"words", changed->sentence}});
  } else {
    std::cout << changed->sentence << '\n';
  }
  return done;
}

desk::Amendment amendment_of(const Options& options) {
  desk::Amendment made;
  made.why = options.why;
  made.approved_by = options.by;
  desk::LineAmendment line;
  line.item = {options.item};
  line.copy = options.copy;
  line.quantity = options.quantity;
  line.drop = options.drop;
  if (!options.day.empty()) line.promised = date_option("--promised", options.day);
  made.lines.push_back(std::move(line));
  return made;
}

Expected<desk::OrderChanged> cancel(store::Store& store, const Options& options,
                                    const desk::Desk& desk) {
  if (options.item.empty()) return desk::cancel_order(store, options.name, options.why, desk);
  auto given = options;
  given.drop = true;
  return desk::amend_order(store, options.name, amendment_of(given), desk);
}

int reprint(const Context& context, const Options& options) {
  const auto store = context.open(store::OpenMode::existing);
  const auto made =
      desk::reprint_order(*store->read(), options.name, options.revision, options.folder);
  if (!made) throw WrongUse{made.error().sentence};
  if (context.json) {
    print({{"order_ref", options.name.ref},
           {"revision", made->revision},
           {"file", made->file.string()}});
  } else {
    std::cout << fmt::format("Revision {} of order {}: {}\n", made->revision, options.name.ref,
                             made->file.string());
  }
  return done;
}

/// A subcommand of "order" that works on the order named first.
Command* named_order(Command& order, const char* name, const char* help, const Given& options) {
  auto* command = order.add_subcommand(name, help);
  command->add_option("ref", options->name.ref, "The order's number")->required();
  command->add_option("--supplier", options->name.supplier,
                      "The supplier, when two have an order of this number");
  return command;
}

template <class Run>
void on_run(Command* command, Context& context, const Given& options, Run run) {
  command->callback([&context, options, run] {
    context.run = [&context, options, run] { return run(context, *options); };
  });
}

/// Runs a change of an order.
template <class Change>
auto changing(Change change) {
  return [change](const Context& context, const Options& options) {
    const auto store = context.open(store::OpenMode::existing);
    const desk::Desk desk{context.today(), context.author("").who};
    return tell(context, options, change(*store, options, desk));
  };
}

void add_reads(Command& order, Context& context) {
  const auto options = std::make_shared<Options>();
  auto* listed = order.add_subcommand("list", "All orders, open ones first");
  listed->add_flag("--open", options->open, "Only what is not received and not cancelled");
  listed->add_option("--supplier", options->name.supplier, "Only of this supplier");
  on_run(listed, context, options, list);
  const auto shown = std::make_shared<Options>();
  auto* command = named_order(order, "show", "An order with its lines and revisions", shown);
  command->add_option("--revision", shown->revision, "Only this revision, as it was sent")
      ->within(1, 1'000'000);
  on_run(command, context, shown, show);
  const auto again = std::make_shared<Options>();
  command = named_order(order, "reprint", "Write the workbook of a revision again", again);
  command->add_option("--revision", again->revision, "Which (default: the latest)")
      ->within(1, 1'000'000);
  command->add_option("--out", again->folder, "Folder for the workbook")->required();
  on_run(command, context, again, reprint);
}

void add_placing(Command& order, Context& context) {
  auto options = std::make_shared<Options>();
  auto* command = named_order(order, "place", "Count a draft as sent and on order", options);
  on_run(command, context, options, changing([](auto& store, const auto& o, const auto& desk) {
           return desk::place_order(store, o.name, desk);
         }));
  options = std::make_shared<Options>();
  command = named_order(order, "approve", "Record that a named person approved a draft", options);
  command->add_option("--by", options->by, "Who approved it")->required();
  on_run(command, context, options, changing([](auto& store, const auto& o, const auto& desk) {
           return desk::approve_order(store, o.name, o.by, desk);
         }));
  options = std::make_shared<Options>();
  command = named_order(order, "cancel", "Cancel an order, or a line of it", options);
  command->add_option("--item", options->item, "Only the line of this item");
  command->add_option("--copy", options->copy, "Which line, when the item has several");
  command->add_option("--why", options->why, "The reason")->required();
  on_run(command, context, options, changing([](auto& store, const auto& o, const auto& desk) {
           return cancel(store, o, desk);
         }));
}

void add_amending(Command& order, Context& context) {
  auto options = std::make_shared<Options>();
  auto* command = named_order(order, "amend", "Change, add or drop a line of an order", options);
  command->add_option("--item", options->item, "The item of the line")->required();
  command->add_option("--copy", options->copy, "Which line, when the item has several");
  command->add_option("--quantity", options->quantity, "Pieces in all; adds a missing line");
  command->add_flag("--drop", options->drop, "Cancel what has not come of the line");
  command->add_option("--promised", options->day, "The day that the supplier has promised");
  command->add_option("--why", options->why, "The reason; needed once the order is placed");
  command->add_option("--approved-by", options->by, "Who approved the new sum");
  on_run(command, context, options, changing([](auto& store, const auto& o, const auto& desk) {
           return desk::amend_order(store, o.name, amendment_of(o), desk);
         }));
  options = std::make_shared<Options>();
  command = named_order(order, "back-order", "Note that the rest of a line comes later", options);
  command->add_option("--item", options->item, "The item of the line")->required();
  command->add_option("--until", options->day, "The day promised (default: none was)");
  command->add_option("--why", options->why, "What the supplier said");
  on_run(command, context, options, changing([](auto& store, const auto& o, const auto& desk) {
           std::optional<Date> until;
           if (!o.day.empty()) until = date_option("--until", o.day);
           return desk::back_order(store, o.name, {o.item}, until, o.why, desk);
         }));
}

}  // namespace

void add_order(Command& app, Context& context) {
  auto* order = app.add_subcommand("order",
                                   "Look at orders, and place, approve, amend, cancel or "
                                   "reprint one");
  order->require_subcommand();
  order->fallthrough();
  add_reads(*order, context);
  add_placing(*order, context);
  add_amending(*order, context);
}

}  // namespace sparewell::batch
