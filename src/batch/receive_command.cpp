#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/receiving_words.hpp"

namespace sparewell::batch {
namespace {

using Match = supply::OrderMatch::Kind;

struct Options {
  desk::ReceivingRequest request;
  std::string use_by;
  bool list = false;
};

Json json_of(const OrderLine& line) {
  return {{"supplier", line.supplier.text},   {"order_ref", line.order_ref},
          {"item_code", line.item.text},      {"ordered_on", batch::json_of(line.ordered_on)},
          {"quantity", line.quantity},        {"received_quantity", line.received_quantity},
          {"outstanding", line.outstanding()}};
}

Json json_of(const supply::ExpectedLine& expected) {
  Json row = json_of(expected.line);
  row["lead_days"] = expected.lead_days;
  row["lead_days_assumed"] = expected.lead_assumed;
  row["expected_on"] = batch::json_of(expected.expected_on);
  row["overdue_days"] = expected.overdue_days;
  row["promised_on"] = batch::json_of(expected.promised_on);
  row["on_back_order"] = expected.on_back_order;
  return row;
}

Json json_of(const std::vector<desk::PutAway>& pieces) {
  Json rows = Json::array();
  for (const auto& piece : pieces) {
    rows.push_back({{"patient", piece.patient.text},
                    {"side", piece.side ? Json(word(*piece.side)) : Json(nullptr)},
                    {"needed_on", batch::json_of(piece.needed_on)}});
  }
  return rows;
}

Json findings_json(const desk::ReceivingOutcome& outcome) {
  Json rows = Json::array();
  const auto words = desk::finding_sentences(outcome);
  if (outcome.match.kind == Match::wrong_item || outcome.match.kind == Match::several) {
    const char* kind = outcome.match.kind == Match::several ? "several_orders" : "wrong_item";
    rows.push_back({{"kind", kind}, {"stops", true}, {"words", words.front()}});
    return rows;
  }
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto& finding = outcome.receiving.findings[i];
    rows.push_back(
        {{"kind", desk::finding_key(finding.kind)}, {"stops", finding.stops}, {"words", words[i]}});
  }
  return rows;
}

void print_json(const desk::ReceivingOutcome& outcome) {
  const auto& delivery = outcome.delivery;
  Json lines = Json::array();
  for (const auto& receipt : outcome.receiving.lines) {
    lines.push_back(json_of(receipt.after));
    lines.back()["taken"] = receipt.quantity;
  }
  Json answering = Json::array();
  if (!outcome.is_recorded()) {
    for (const auto at : outcome.match.lines) answering.push_back(json_of(outcome.lines[at]));
  }
  print({{"recorded", outcome.is_recorded()},
         {"on", batch::json_of(delivery.on)},
         {"item_code", outcome.item.code.text},
         {"quantity", delivery.quantity},
         {"lot", delivery.lot},
         {"use_by", batch::json_of(delivery.use_by)},
         {"place", delivery.place},
         {"damaged", delivery.damaged},
         {"serials", delivery.serials},
         {"damaged_serials", delivery.damaged_serials},
         {"put_away", json_of(outcome.put_away)},
         {"still_waiting", json_of(outcome.waiting)},
         {"lines", std::move(lines)},
         {"findings", findings_json(outcome)},
         {"order_lines", std::move(answering)}});
}

void print_words(const desk::ReceivingOutcome& outcome) {
  for (const auto& line : desk::receipt_lines(outcome)) std::cout << line << '\n';
  for (const auto& sentence : desk::finding_sentences(outcome)) std::cout << sentence << '\n';
  if (outcome.match.kind != Match::several) return;
  for (const auto at : outcome.match.lines) {
    std::cout << "  " << desk::open_line_words(outcome.lines[at]) << '\n';
  }
}

int list(const Context& context, const std::string& supplier) {
  const Date today = context.today();
  const auto store = context.open(store::OpenMode::existing);
  const auto expected = desk::read_still_to_come(*store->read(), supplier, today);
  if (!expected) throw WrongUse{expected.error().sentence};
  if (context.json) {
    Json lines = Json::array();
    for (const auto& line : *expected) lines.push_back(json_of(line));
    print({{"today", batch::json_of(today)}, {"lines", std::move(lines)}});
    return done;
  }
  if (expected->empty()) std::cout << "Nothing is still to come.\n";
  for (const auto& line : *expected) std::cout << desk::expected_line_words(line) << '\n';
  return done;
}

int run(const Context& context, const Options& options) {
  if (options.list) return list(context, options.request.supplier);
  auto request = options.request;
  if (!options.use_by.empty()) request.use_by = date_option("--use-by", options.use_by);
  const Date today = context.today();
  const auto store = context.open(store::OpenMode::existing);
  const auto outcome =
      desk::receive_delivery(*store, request, today, context.author("a delivery was received"));
  if (!outcome) throw WrongUse{outcome.error().sentence};
  context.json ? print_json(*outcome) : print_words(*outcome);
  return desk::finding_sentences(*outcome).empty() ? done : done_with_findings;
}

}  // namespace

void add_receive(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "receive", "Record what a supplier delivered, or list what is still to come");
  const auto options = std::make_shared<Options>();
  auto& request = options->request;
  command->add_option("--order", request.order_ref,
                      "The order's number (default: the only open order of the item)");
  command->add_option("--supplier", request.supplier, "Only orders of this supplier");
  command->add_option("--item", request.item, "The item's code");
  command->add_option("--quantity", request.quantity, "Pieces that came")->within(1, 1'000'000);
  command->add_option("--lot", request.lot, "The lot on the label");
  command->add_option("--use-by", options->use_by, "The use-by date on the label, YYYY-MM-DD");
  command->add_option("--place", request.place, "Where it is put (default: the main place)");
  command
      ->add_option("--scan", request.scans,
                   "The label as scanned or typed, GS1 or HIBC; once for each barcode")
      ->repeatable();
  command
      ->add_option("--damaged", request.damaged,
                   "Pieces of --quantity that came damaged: they go to \"quarantine\", and are "
                   "still to come")
      ->within(0, 1'000'000);
  command->add_option("--damage", request.damage, "What is wrong with the damaged pieces");
  command->add_flag("--not-replaced", request.damaged_settled,
                    "The supplier does not replace the damaged pieces");
  command->add_option("--serial", request.serials, "Serial numbers of the sound pieces: S1,S2")
      ->comma_separated();
  command
      ->add_option("--damaged-serial", request.damaged_serials,
                   "Serial numbers of the damaged pieces: S3,S4")
      ->comma_separated();
  command->add_flag("--accept-serial", request.accepted.known_serial,
                    "A serial number is known already, and the same piece has come again");
  command->add_flag("--accept-extra", request.accepted.extra, "Take more than was ordered");
  command->add_flag("--without-use-by", request.accepted.no_use_by,
                    "The label gives no use-by date, although the item has a shelf life");
  command->add_flag("--list", options->list, "List what is still to come, and what is overdue");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
