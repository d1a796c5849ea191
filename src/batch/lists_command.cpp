#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/papers/month_forecast.hpp"
#include "desk/papers/stock_list.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string out;
  int months = 6;
};

void say_written(const Context& context, const std::string& file, Json document) {
  if (context.json) {
    document["file"] = file.empty() ? Json(nullptr) : Json(file);
    print(document);
  } else if (!file.empty()) {
    std::cout << fmt::format("Written to {}.\n", file);
  }
}

int write_stock_list(const Context& context, const Options& options) {
  const Date today = context.today();
  const auto list = desk::stock_list(context.clinic_on(today), today);
  exchange::write_list_workbook(list, options.out);
  say_written(context, options.out,
              {{"today", json_of(today)}, {"rows", list.sheets.front().rows.size()}});
  return done;
}

Json json_of(const supply::ItemMonths& needs, const std::vector<supply::Month>& months) {
  Json rows = Json::array();
  for (std::size_t i = 0; i < months.size(); ++i) {
    const auto& need = needs.months[i];
    rows.push_back({{"from", batch::json_of(months[i].from)},
                    {"to", batch::json_of(months[i].to)},
                    {"expected", need.mean},
                    {"enough_at_90", need.pieces.least_covering(desk::month_assurance)}});
  }
  return {{"item_code", needs.item.text}, {"months", std::move(rows)}};
}

void print_words(const desk::MonthForecast& forecast) {
  for (const auto& needs : forecast.items) {
    std::cout << needs.item.text;
    for (std::size_t i = 0; i < forecast.months.size(); ++i) {
      const auto& need = needs.months[i];
      std::cout << fmt::format("{} {}: {:.2f} expected, {} enough at 90 %", i == 0 ? " " : ";",
                               desk::month_words(forecast.months[i]), need.mean,
                               need.pieces.least_covering(desk::month_assurance));
    }
    std::cout << '\n';
  }
  std::cout << desk::forecast_caution() << '\n';
}

int months(const Context& context, const Options& options) {
  const auto assessment = context.forecast();
  const auto forecast = desk::forecast_by_month(assessment, options.months);
  if (!options.out.empty()) {
    exchange::write_list_workbook(desk::month_forecast_list(forecast, assessment.clinic),
                                  options.out);
  }
  Json items = Json::array();
  for (const auto& needs : forecast.items) items.push_back(json_of(needs, forecast.months));
  if (!context.json && options.out.empty()) print_words(forecast);
  if (!context.json) print_notes(assessment.fitted);
  say_written(context, options.out,
              {{"today", batch::json_of(forecast.today)},
               {"items", std::move(items)},
               {"caution", desk::forecast_caution()}});
  return done;
}

}  // namespace

void add_lists(Command& app, Context& context) {
  const auto options = std::make_shared<Options>();
  auto* stock = app.add_subcommand("stock-list",
                                   "Write what lies where, use-by dates and values as a workbook");
  stock->add_option("--out", options->out, "The workbook to write, .xlsx")->required();
  stock->callback([&context, options] {
    context.run = [&context, options] { return write_stock_list(context, *options); };
  });
  auto* ahead = app.add_subcommand(
      "months", "Pieces of each item that will be needed month by month, and their cost");
  ahead->add_option("--months", options->months, "Full months after the current one")
      ->within(1, 36);
  ahead->add_option("--out", options->out, "Write them as a workbook, .xlsx");
  ahead->callback([&context, options] {
    context.run = [&context, options] { return months(context, *options); };
  });
}

}  // namespace sparewell::batch
