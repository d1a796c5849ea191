#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/prices/price_words.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::PriceListRequest request;
  std::vector<std::string> columns;
  std::string file;
  std::string separator = ",";
  std::string decimal_sign = ".";
  bool accept = false;
  bool accept_doubtful = false;
};

void read_columns(Options& options) {
  for (const auto& column : options.columns) {
    auto headings = desk::read_headings(column);
    if (!headings) throw WrongUse{headings.error().sentence};
    options.request.columns.merge(*headings);
  }
}

void read_format(Options& options) {
  if (options.separator == "tab") options.separator = "\t";
  options.request.format.separator = options.separator.front();
  options.request.format.decimal_sign = options.decimal_sign.front();
}

Json json_of(const supply::PriceChange& change) {
  Json doubts = Json::array();
  for (const auto doubt : change.doubts) doubts.push_back(desk::price_doubt_key(doubt));
  const auto ratio = supply::price_ratio(change.before.unit_cost, change.after.unit_cost);
  return {{"row", change.row},
          {"item_code", change.before.code.text},
          {"unit_cost_before", batch::json_of(change.before.unit_cost)},
          {"unit_cost", batch::json_of(change.after.unit_cost)},
          {"currency",
           change.after.unit_cost ? Json(change.after.unit_cost->currency.code) : Json(nullptr)},
          {"percent", ratio ? Json(100 * (*ratio - 1)) : Json(nullptr)},
          {"changes", desk::price_changes(change)},
          {"changes_item", change.changes_item()},
          {"doubts", std::move(doubts)}};
}

void print_json(const desk::PriceListOutcome& outcome) {
  const auto& found = outcome.found;
  Json changes = Json::array();
  for (const auto& change : found.changes) changes.push_back(json_of(change));
  Json unknown = Json::array();
  for (const auto& row : found.unknown) {
    unknown.push_back({{"row", row.row},
                       {"supplier_item", row.supplier_item},
                       {"item_code", row.item_code},
                       {"gtin", row.gtin},
                       {"description", row.description},
                       {"unit_cost", batch::json_of(row.unit_cost)}});
  }
  Json missing = Json::array();
  for (const auto& item : found.missing) missing.push_back(item.code.text);
  Json refused = Json::array();
  for (const auto& row : found.refused) {
    refused.push_back({{"row", row.row}, {"field", row.field}, {"reason", row.reason}});
  }
  print({{"file", outcome.file},
         {"changes", std::move(changes)},
         {"unchanged", found.unchanged},
         {"not_in_catalogue", std::move(unknown)},
         {"not_on_list", std::move(missing)},
         {"refused", std::move(refused)},
         {"ignored_headings", outcome.ignored},
         {"written", outcome.written},
         {"held_back", outcome.held_back}});
}

int run(const Context& context, Options& options) {
  read_columns(options);
  read_format(options);
  options.request.file = options.file;
  const auto acceptance = !options.accept            ? desk::PriceAcceptance::nothing
                          : !options.accept_doubtful ? desk::PriceAcceptance::sure
                                                     : desk::PriceAcceptance::doubtful_too;
  const auto store = context.open(store::OpenMode::existing);
  const auto outcome =
      desk::update_prices(*store, options.request, acceptance, context.author({}).who);
  if (!outcome) throw WrongUse{outcome.error().sentence};
  if (context.json) {
    print_json(*outcome);
  } else {
    for (const auto& line : desk::price_lines(*outcome)) std::cout << line << '\n';
    if (!options.accept) std::cout << "Nothing is written; add --accept to take the list over.\n";
  }
  const auto& found = outcome->found;
  bool open = outcome->held_back > 0 || !found.refused.empty();
  for (const auto& change : found.changes) {
    if (!options.accept && change.changes_item()) open = true;
  }
  return open ? done_with_findings : done;
}

}  // namespace

void add_prices(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "prices", "Show what a supplier's price list changes, and with --accept take it over");
  const auto options = std::make_shared<Options>();
  command->add_option("file", options->file, "The price list, .xlsx or CSV")->required();
  command->add_option("--supplier", options->request.supplier.text, "Whose list it is")->required();
  command->add_option("--sheet", options->request.sheet,
                      "The workbook's sheet (default: the first)");
  command
      ->add_option("--column", options->columns,
                   "FIELD=HEADING for a column that is named unusually, as in unit_cost=Preis")
      ->repeatable();
  command->add_option("--separator", options->separator, "Of CSV: , or ; or tab")
      ->one_of({",", ";", "tab"});
  command->add_option("--decimal-sign", options->decimal_sign, "Of CSV and of text: . or ,")
      ->one_of({".", ","});
  command->add_flag("--descriptions", options->request.take_descriptions,
                    "Take the list's descriptions too");
  command->add_flag("--accept", options->accept, "Write the changes that are not doubtful");
  command->add_flag("--accept-doubtful", options->accept_doubtful,
                    "With --accept: a person has looked at the doubtful prices, write them too");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
