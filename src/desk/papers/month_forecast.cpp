#include "desk/papers/month_forecast.hpp"

#include <chrono>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using exchange::ListFormat;

exchange::ListRow row_of(const supply::ItemMonths& needs, const Item* item) {
  exchange::ListRow row;
  row.cells = {needs.item.text,
               item ? item_words(*item) : std::string{said("not in the catalogue")}};
  exchange::Sum expected;
  for (const auto& month : needs.months) {
    expected.columns.push_back(row.cells.size());
    row.cells.emplace_back(month.mean);
    row.cells.emplace_back(static_cast<double>(month.pieces.least_covering(month_assurance)));
  }
  const auto total = row.cells.size();
  row.cells.emplace_back(std::move(expected));
  if (item && item->unit_cost) {
    row.cells.insert(row.cells.end(), {*item->unit_cost, exchange::Product{total, total + 1},
                                       item->unit_cost->currency.code});
  } else {
    row.cells.resize(total + 4);
  }
  return row;
}

}  // namespace

MonthForecast forecast_by_month(const Assessment& assessment, int count,
                                const supply::MonthsGoOn& goes_on) {
  auto months = supply::months_ahead(assessment.today, count);
  auto items = supply::demand_by_month(assessment.clinic, assessment.lives, assessment.today,
                                       months, goes_on);
  return {assessment.today, std::move(months), std::move(items)};
}

std::string month_words(const supply::Month& month) {
  auto words = month_words(month.from);
  const bool whole = std::chrono::year_month_day{month.from}.day() == std::chrono::day{1};
  return whole ? words : say("rest of {}", words);
}

std::string forecast_caution() {
  return said(
      "A forecast supports and does not replace clinical judgement: inspect worn parts at every "
      "visit.");
}

exchange::ListWorkbook month_forecast_list(const MonthForecast& forecast, const Clinic& clinic) {
  exchange::ListSheet sheet;
  sheet.name = said("Forecast");
  sheet.title = say("Forecast by month, from {}", date_words(forecast.today));
  sheet.head = {{said("Date"), forecast.today}};
  sheet.caution = forecast_caution();
  sheet.columns = {{said("Item")}, {said("Description")}};
  for (const auto& month : forecast.months) {
    const auto words = month_words(month);
    sheet.columns.push_back({say("{}: expected", words), ListFormat::decimal});
    sheet.columns.push_back({say("{}: enough at 90 %", words), ListFormat::whole});
  }
  const auto total = sheet.columns.size();
  sheet.columns.insert(sheet.columns.end(), {{said("Expected in all"), ListFormat::decimal},
                                             {said("Unit cost"), ListFormat::money},
                                             {said("Expected cost"), ListFormat::money},
                                             {said("Currency")}});
  sheet.total = exchange::ListTotal{said("Total"), 1, total + 2, total + 3};
  const ClinicIndex index{clinic};
  long unknown = 0;
  for (const auto& needs : forecast.items) {
    const auto* item = index.item(needs.item);
    if (item == nullptr || !item->unit_cost) ++unknown;
    sheet.rows.push_back(row_of(needs, item));
  }
  sheet.closing = {
      said("Expected: the mean number of pieces. Enough at 90 %: with this many pieces the month's "
           "need "
           "is met in nine months of ten."),
      said("Costs are the catalogue's for a single piece, without price breaks and freight. New "
           "patients "
           "are not in the forecast.")};
  if (unknown > 0) {
    sheet.total->label = said("Total of known costs");
    sheet.closing.push_back(say_n("{} item has no known cost and is not in the totals.",
                                  "{} items have no known cost and are not in the totals.",
                                  static_cast<unsigned long>(unknown), number_words(unknown)));
  }
  return {said("Forecast by month"), clinic.settings.name, forecast.today, {std::move(sheet)}};
}

}  // namespace sparewell::desk
