#include "desk/play_rows.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/play_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::play::Outcome;
using supply::play::Played;
using supply::play::Policy;
using supply::play::Totals;

constexpr double least_target_shown = 0.80;

struct Named {
  Policy policy;
  const char* name;
};
constexpr std::array<Named, 4> curve_names{{{Policy::sparewell, "Sparewell"},
                                            {Policy::by_cost, to_say("Sparewell by cost")},
                                            {Policy::min_max, to_say("Min-max levels")},
                                            {Policy::when_empty, to_say("Order when empty")}}};

bool is_present(const Totals& run, double service) {
  return run.setting.policy == Policy::sparewell && run.setting.step == service;
}

bool on_frontier(const Totals& run, const std::vector<Outcome>& best) {
  return std::ranges::any_of(best, [&](const Outcome& each) {
    return each.stock == run.stock && each.fill_rate == run.fill_rate();
  });
}

double of_each(std::int64_t sum, const Totals& run) {
  return static_cast<double>(sum) / run.worlds;
}

/// A mean over the futures with one decimal, a count of the past without.
Cell count_cell(std::int64_t sum, const Totals& run) {
  const double mean = of_each(sum, run);
  return {run.worlds == 1 ? number_words(sum) : say("{:.1f}", mean), mean};
}

Cell money_cell(double minor, const Currency& currency) {
  return {whole_amount(minor, currency), minor};
}

std::string run_words(const Totals& run, const Currency& currency) {
  return say("{}: {} on hand when asked for, {} in stock on average.", setting_words(run.setting),
             share_words(run.fill_rate()), whole_amount(run.stock, currency));
}

}  // namespace

std::vector<std::size_t> runs_to_show(const Played& played) {
  std::vector<Outcome> min_max;
  for (const Totals& run : played.runs) {
    if (run.setting.policy == Policy::min_max) min_max.push_back({run.fill_rate(), run.stock});
  }
  const auto best = supply::play::frontier(std::move(min_max));
  std::vector<std::size_t> made;
  std::vector<Outcome> shown;
  for (std::size_t i = 0; i < played.runs.size(); ++i) {
    const Totals& run = played.runs[i];
    if (run.setting.policy == Policy::min_max) {
      // Several factors may come to the same levels.
      if (!(run.setting.step > 0) || !on_frontier(run, best) || on_frontier(run, shown)) continue;
      shown.push_back({run.fill_rate(), run.stock});
    } else if (run.setting.policy != Policy::when_empty && run.setting.step < least_target_shown) {
      continue;
    }
    made.push_back(i);
  }
  return made;
}

std::vector<Column> run_columns() {
  return {
      {said("Way of ordering"), 22, Align::left,
       said("Sparewell and by cost at a service target; min-max at "
            "a factor on the use over lead time and review"),
       2},
      {said("On hand"), 9, Align::right,
       said("Part of the pieces that were on hand when they were asked for")},
      {said("In stock"), 13, Align::right, said("Mean money in stock"), 1},
      {said("Waiting"), 9, Align::right, said("Patients kept waiting; a mean over the futures")},
      {said("Days"), 7, Align::right, said("Mean days of those who waited")},
      {said("Longest"), 9, Align::right, said("Most days that anybody waited")},
      {said("Rush"), 7, Align::right,
       said("Requests that found nothing on hand and nothing free arriving "
            "within 2 days")},
      {said("Expired"), 11, Align::right,
       said("Money of the pieces thrown away past their use-by date"), 1},
      {said("Orders"), 8, Align::right, said("Orders sent, one for each supplier and day")},
      {said("Freight"), 11, Align::right, said("Freight charged for them"), 1},
  };
}

std::vector<TableRow> run_rows(const Played& played, double service) {
  std::vector<TableRow> rows;
  for (const std::size_t i : runs_to_show(played)) {
    const Totals& run = played.runs[i];
    TableRow row;
    row.id = fmt::format("{}", i);
    row.strong = is_present(run, service);
    row.cells = {
        {row.strong ? say("{} (present)", setting_words(run.setting)) : setting_words(run.setting),
         std::nullopt},
        {share_words(run.fill_rate()), run.fill_rate()},
        money_cell(run.stock, played.currency),
        count_cell(run.kept_waiting, run),
        {say("{:.1f}", run.mean_wait()), run.mean_wait()},
        {number_words(run.longest_wait), run.longest_wait},
        count_cell(run.rush, run),
        money_cell(of_each(run.expired, run), played.currency),
        count_cell(run.orders, run),
        money_cell(of_each(run.freight, run), played.currency)};
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<PlayCurve> play_curves(const Played& played, double service) {
  const double scale = std::pow(10, played.currency.decimals());
  const auto shown = runs_to_show(played);
  std::vector<PlayCurve> curves;
  for (const auto& [policy, name] : curve_names) {
    PlayCurve curve{said(name), {}};
    for (const std::size_t i : shown) {
      const Totals& run = played.runs[i];
      if (run.setting.policy != policy) continue;
      curve.points.push_back({fmt::format("{}", i), run_words(run, played.currency),
                              run.stock / scale, run.fill_rate(),
                              is_present(run, service) ? said("present target") : ""});
    }
    std::ranges::sort(curve.points, {}, &PlayPoint::stock);
    curves.push_back(std::move(curve));
  }
  return curves;
}

}  // namespace sparewell::desk
