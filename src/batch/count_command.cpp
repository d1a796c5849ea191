#include <algorithm>
#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/counting/count_plan.hpp"
#include "desk/counting/count_words.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string place;
  int most = 0;
  std::string out;
  bool blind = false;
  std::string file;
  std::string sheet;
  std::string item;
  std::string lot;
  std::string use_by;
  std::optional<int> quantity;
  bool book = false;
  bool accept_moved = false;
  std::string counted_by;
};

Json json_of(const supply::CountCandidate& candidate) {
  return {{"place", candidate.place},
          {"item_code", candidate.item.text},
          {"lots", candidate.levels.size()},
          {"pieces", candidate.pieces},
          {"value", batch::json_of(candidate.value)},
          {"currency", candidate.value ? Json(candidate.value->currency.code) : Json(nullptr)},
          {"counts", candidate.counts},
          {"wrong_counts", candidate.wrong_counts},
          {"last_counted", batch::json_of(candidate.last_counted)},
          {"rank", candidate.rank}};
}

desk::CountPlan read_plan(const Context& context, const Options& options, Date today) {
  const auto store = context.open(store::OpenMode::existing);
  auto plan = desk::read_count_plan(*store->read(), today, options.place, options.most);
  if (!plan) throw WrongUse{plan.error().sentence};
  return std::move(*plan);
}

int plan(const Context& context, const Options& options) {
  const Date today = context.today();
  const auto made = read_plan(context, options, today);
  if (context.json) {
    Json rows = Json::array();
    for (const auto& candidate : made.candidates) rows.push_back(json_of(candidate));
    print({{"today", batch::json_of(today)}, {"shelves", std::move(rows)}});
    return done;
  }
  for (const auto& candidate : made.candidates) std::cout << desk::plan_line(candidate) << '\n';
  if (made.candidates.empty()) std::cout << "Nothing lies there.\n";
  return done;
}

int write_sheet(const Context& context, const Options& options) {
  const Date today = context.today();
  const auto made = read_plan(context, options, today);
  const auto list = desk::count_sheet(made.candidates, made.clinic, today, options.blind);
  exchange::write_list_workbook(list, options.out);
  const auto rows = list.sheets.front().rows.size();
  if (context.json) {
    print({{"today", batch::json_of(today)}, {"file", options.out}, {"rows", rows}});
  } else {
    std::cout << fmt::format("{} lots to count are written to {}.\n", rows, options.out);
  }
  return done;
}

/// What was filled in, or typed as one lot.
desk::CountSheet counted(const Options& options, const std::string& main_place) {
  if (!options.file.empty()) {
    const auto table = exchange::read_sheet(options.file, options.sheet);
    if (!table) throw WrongUse{table.error().sentence};
    const auto sheet = desk::read_count_sheet(*table);
    if (!sheet) throw WrongUse{sheet.error().sentence};
    return *sheet;
  }
  if (options.item.empty() || !options.quantity) {
    throw WrongUse{"Name the filled-in sheet with --file, or --item, --lot and --quantity."};
  }
  desk::CountEntry entry;
  entry.lot.item.text = options.item;
  entry.lot.lot = options.lot;
  if (!options.use_by.empty()) entry.lot.use_by = date_option("--use-by", options.use_by);
  entry.place = options.place.empty() ? main_place : options.place;
  entry.counted = *options.quantity;
  return {{std::move(entry)}, {}, 0};
}

Json json_of(const desk::CountFinding& finding) {
  const auto& entry = finding.entry;
  return {{"row", entry.row},
          {"place", entry.place},
          {"item_code", entry.lot.item.text},
          {"lot", entry.lot.lot},
          {"use_by", batch::json_of(entry.lot.use_by)},
          {"recorded", finding.recorded},
          {"counted", entry.counted},
          {"difference", finding.difference()},
          {"value", batch::json_of(finding.value())},
          {"moved", finding.moved},
          {"booked", finding.booked}};
}

void print_json(const desk::CountReview& review) {
  Json rows = Json::array();
  for (const auto& finding : review.findings) rows.push_back(json_of(finding));
  Json refused = Json::array();
  for (const auto& row : review.refused) {
    refused.push_back({{"row", row.row}, {"column", row.column}, {"reason", row.reason}});
  }
  print({{"counted", std::move(rows)}, {"refused", std::move(refused)}, {"blank", review.blank}});
}

int enter(const Context& context, const Options& options) {
  const Date today = context.today();
  const auto store = context.open(store::OpenMode::existing);
  const auto sheet = counted(options, store->read()->settings().main_place);
  desk::CountReview review;
  if (options.book) {
    auto author = context.author("a count of the shelf");
    const auto by = options.counted_by.empty() ? author.who : options.counted_by;
    review = desk::book_count(*store, sheet, {by, options.accept_moved}, today, author);
  } else {
    review = desk::review_count(*store->read(), sheet);
  }
  if (context.json) {
    print_json(review);
  } else {
    for (const auto& finding : review.findings) {
      if (finding.difference() != 0) std::cout << desk::count_line(finding) << '\n';
    }
    for (const auto& refused : review.refused) {
      std::cout << desk::refused_count_line(refused) << '\n';
    }
    std::cout << desk::count_summary(review) << '\n';
    if (!options.book) std::cout << "Nothing is booked; add --book to book it.\n";
  }
  const bool open = std::ranges::any_of(review.findings, [](const desk::CountFinding& finding) {
    return finding.difference() != 0 && !finding.booked;
  });
  return open || !review.refused.empty() ? done_with_findings : done;
}

void add_plan_options(Command& command, Options& options) {
  command.add_option("--place", options.place, "Only this place");
  command.add_option("--most", options.most, "At most so many items at a place")
      ->within(1, 1'000'000);
}

void add_enter(Command& parent, Context& context, const std::shared_ptr<Options>& options) {
  auto* command = parent.add_subcommand(
      "enter", "Show what a count changes, and with --book record it as count corrections");
  command->add_option("--file", options->file, "The filled-in count sheet, .xlsx or CSV");
  command->add_option("--sheet", options->sheet, "Its sheet (default: the first)");
  command->add_option("--place", options->place, "Where it was counted (default: the main place)");
  command->add_option("--item", options->item, "The item's code");
  command->add_option("--lot", options->lot, "The lot");
  command->add_option("--use-by", options->use_by, "Its use-by date, YYYY-MM-DD");
  command->add_option("--quantity", options->quantity, "Pieces found")->within(0, 1'000'000);
  command->add_flag("--book", options->book, "Record it");
  command->add_flag("--accept-moved", options->accept_moved,
                    "Also lots that moved since the sheet was written: they were counted later");
  command->add_option("--counted-by", options->counted_by, "Who counted (default: the account)");
  command->callback([&context, options] {
    context.run = [&context, options] { return enter(context, *options); };
  });
}

}  // namespace

void add_count(Command& app, Context& context) {
  auto* command =
      app.add_subcommand("count", "Plan counts of the shelf, write sheets, enter counts");
  command->require_subcommand();
  command->fallthrough();
  const auto options = std::make_shared<Options>();
  auto* planned = command->add_subcommand("plan", "What to count next");
  add_plan_options(*planned, *options);
  planned->callback([&context, options] {
    context.run = [&context, options] { return plan(context, *options); };
  });
  auto* sheet = command->add_subcommand("sheet", "Write a count sheet to fill in");
  add_plan_options(*sheet, *options);
  sheet->add_option("--out", options->out, "The workbook to write, .xlsx")->required();
  sheet->add_flag("--blind", options->blind, "Do not show what the records say");
  sheet->callback([&context, options] {
    context.run = [&context, options] { return write_sheet(context, *options); };
  });
  add_enter(*command, context, options);
}

}  // namespace sparewell::batch
