#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/papers/recall_list.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string item;
  std::string lot;
  std::string reason;
  bool quarantine = false;
  bool names = false;
  std::string out;
};

Json json_of(const supply::RecalledUnit& recalled) {
  const Unit& unit = recalled.unit;
  return {{"side", word(unit.side)},
          {"lot", unit.lot},
          {"serial", unit.serial},
          {"issued_on", batch::json_of(unit.issued_on)},
          {"ended_on", batch::json_of(unit.ended_on)},
          {"end_reason", unit.end_reason ? Json(word(*unit.end_reason)) : Json(nullptr)},
          {"in_hands", recalled.in_hands},
          {"lot_match", desk::lot_match_words(recalled.match)}};
}

Json json_of(const supply::RecalledPatient& recalled, bool names) {
  Json row{{"patient_ref", recalled.patient.ref.text}};
  if (names) {
    row["given_name"] = recalled.patient.given_name;
    row["family_name"] = recalled.patient.family_name;
  }
  row["in_hands"] = recalled.in_hands();
  row["next_visit"] = batch::json_of(recalled.visit);
  row["units"] = Json::array();
  for (const auto& unit : recalled.units) row["units"].push_back(json_of(unit));
  return row;
}

Json json_of(const supply::RecalledStock& stock) {
  const auto& [lot, place, quantity] = stock.level;
  return {{"place", place},
          {"lot", lot.lot},
          {"use_by", batch::json_of(lot.use_by)},
          {"quantity", quantity},
          {"quarantined", stock.quarantined()},
          {"lot_match", desk::lot_match_words(stock.match)}};
}

Json json_of(const supply::RecalledLoan& lent) {
  return {{"loan", lent.loan.number},
          {"patient_ref", lent.loan.patient.text},
          {"side", word(lent.loan.side)},
          {"lot", lent.loan.lot.lot},
          {"outstanding", lent.loan.outstanding()},
          {"due_on", batch::json_of(lent.loan.due_on)},
          {"lot_match", desk::lot_match_words(lent.match)}};
}

Json json_of(const OrderLine& line) {
  return {{"supplier", line.supplier.text},   {"order_ref", line.order_ref},
          {"state", word(line.state)},        {"ordered_on", batch::json_of(line.ordered_on)},
          {"quantity", line.quantity},        {"received_quantity", line.received_quantity},
          {"outstanding", line.outstanding()}};
}

Json json_of(const StockLevel& moved) {
  return {{"place", moved.place},
          {"lot", moved.lot.lot},
          {"use_by", batch::json_of(moved.lot.use_by)},
          {"quantity", moved.quantity}};
}

void print_json(const supply::Recall& recall, const std::vector<StockLevel>& moved, bool names) {
  Json patients = Json::array();
  for (const auto& patient : recall.patients) patients.push_back(json_of(patient, names));
  Json stock = Json::array();
  for (const auto& level : recall.stock) stock.push_back(json_of(level));
  Json loans = Json::array();
  for (const auto& lent : recall.loans) loans.push_back(json_of(lent));
  Json orders = Json::array();
  for (const auto& line : recall.orders) orders.push_back(json_of(line));
  Json moved_rows = Json::array();
  for (const auto& level : moved) moved_rows.push_back(json_of(level));
  print({{"today", batch::json_of(recall.today)},
         {"item_code", recall.item.text},
         {"lot", recall.lot.empty() ? Json(nullptr) : Json(recall.lot)},
         {"patients", std::move(patients)},
         {"loans", std::move(loans)},
         {"stock", std::move(stock)},
         {"orders", std::move(orders)},
         {"other_lots", recall.other_lots},
         {"moved_to_quarantine", std::move(moved_rows)},
         {"caution", desk::recall_caution()}});
}

std::string reason_of(const Options& options) {
  if (!options.reason.empty()) return options.reason;
  return options.lot.empty() ? fmt::format("recall of {}", options.item)
                             : fmt::format("recall of {}, lot {}", options.item, options.lot);
}

int run(const Context& context, const Options& options) {
  const Date today = context.today();
  const auto store = context.open(store::OpenMode::existing);
  const ItemCode item{options.item};
  const auto snapshot = store->read();
  const auto notice = desk::look_up_recall(*snapshot, item, options.lot, today);
  if (!notice) throw WrongUse{notice.error().sentence};
  const auto names = options.names ? desk::Names::shown : desk::Names::left_out;
  if (!options.out.empty()) {
    exchange::write_list_workbook(desk::recall_list(*notice, names, snapshot->settings().name),
                                  options.out);
  }
  std::vector<StockLevel> moved;
  if (options.quarantine) {
    moved = desk::quarantine_recalled(*store, item, options.lot, today,
                                      context.author(reason_of(options)));
  }
  if (context.json) {
    print_json(notice->found, moved, options.names);
  } else {
    for (const auto& line : desk::recall_lines(*notice, names)) std::cout << line << '\n';
    if (options.quarantine) {
      for (const auto& line : desk::quarantine_lines(moved)) std::cout << line << '\n';
    }
  }
  return notice->found.touches_anything() ? done_with_findings : done;
}

}  // namespace

void add_recall(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "recall", "Who has or had a part of a recalled lot, where more of it lies, what is on order");
  const auto options = std::make_shared<Options>();
  command->add_option("--item", options->item, "The item's code")->required();
  command->add_option("--lot", options->lot, "The recalled lot (default: all lots of the item)");
  command->add_flag("--quarantine", options->quarantine,
                    "Move the recalled stock to the place \"quarantine\"");
  command->add_option("--reason", options->reason, "Why, for the ledger (default: the recall)");
  command->add_flag("--names", options->names, "Give patients' names beside their references");
  command->add_option("--out", options->out, "Write the list as a workbook to tick off, .xlsx");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
