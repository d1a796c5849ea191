/// The forecast by month: pieces of each item, and what they will cost.
#pragma once

#include <vector>

#include "clinic/item.hpp"
#include "desk/assessment.hpp"
#include "exchange/list_workbook.hpp"
#include "supply/month_demand.hpp"

namespace sparewell::desk {

/// The chance with which the "enough" pieces of a month suffice.
inline constexpr double month_assurance = 0.9;

struct MonthForecast {
  Date today;
  std::vector<supply::Month> months;
  std::vector<supply::ItemMonths> items;
};

/// What is left of this month, and `count` months after it.
[[nodiscard]] MonthForecast forecast_by_month(const Assessment& assessment, int count,
                                              const supply::MonthsGoOn& goes_on = {});

/// "rest of Nov 2026", "Dec 2026".
[[nodiscard]] std::string month_words(const supply::Month& month);

/// As a workbook: for each item and month the expected pieces and those that suffice with 90 %
/// chance; expected pieces and cost over all months, and a total for each currency.
[[nodiscard]] exchange::ListWorkbook month_forecast_list(const MonthForecast& forecast,
                                                         const Clinic& clinic);

/// To stand on every forecast.
[[nodiscard]] std::string forecast_caution();

}  // namespace sparewell::desk
