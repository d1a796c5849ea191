#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/trust_words.hpp"
#include "desk/wear_page.hpp"
#include "desk/wear_rows.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr std::size_t told = 1;  // the 80 % span, on which the verdict is given

Cell coverage_cell(const std::optional<wear::Coverage>& coverage) {
  if (!coverage) return {said("not known"), std::nullopt};
  return {coverage_words(*coverage), coverage->share};
}

Cell number_cell(int number) {
  return {number_words(number), number};
}

Cell days_cell(double days) {
  return {say("{:.1f}", days), days};
}

Cell saved_cell(double ours, double peer) {
  return {saved_words(ours, peer), wear::skill(ours, peer)};
}

std::string verdict_text(const wear::BacktestScores& scores) {
  const auto& coverage = scores.coverage[told];
  return coverage ? verdict_word(verdict_on(*coverage, wear::coverage_levels[told]))
                  : std::string{said("not known")};
}

TableRow row_of(std::optional<Kind> kind, const wear::BacktestScores& scores) {
  TableRow row;
  row.id = kind_id(kind);
  row.strong = !kind;
  row.cells = {
      {kind_title(kind), std::nullopt}, number_cell(scores.units), number_cell(scores.events)};
  for (const auto& coverage : scores.coverage) row.cells.push_back(coverage_cell(coverage));
  row.cells.push_back({verdict_text(scores), std::nullopt});
  if (const auto& error = scores.crps) {
    for (const double days : {error->sparewell, error->calendar, error->clinic_weibull}) {
      row.cells.push_back(days_cell(days));
    }
    row.cells.push_back(saved_cell(error->sparewell, error->calendar));
  }
  row.cells.resize(score_columns().size());
  return row;
}

std::string entry_words(std::optional<Kind> kind, const wear::BacktestScores& scores) {
  auto text = fmt::format(
      "{}: {}, {}", kind_title(kind), count_words(scores.units, "forecast", "forecasts"),
      say_n("{} part has worn out since.", "{} parts have worn out since.",
            static_cast<unsigned long>(scores.events), number_words(scores.events)));
  for (std::size_t i = 0; i < scores.coverage.size(); ++i) {
    if (!scores.coverage[i]) continue;
    text += say(" The {:.0f} % span held {}.", 100 * wear::coverage_levels[i],
                coverage_words(*scores.coverage[i]));
  }
  text += say(" Spans: {}.", verdict_text(scores));
  if (!scores.crps) return text;
  return text +
         say(" Mean error {:.1f} days; {:.1f} with a calendar interval, {:.1f} with one law.",
             scores.crps->sparewell, scores.crps->calendar, scores.crps->clinic_weibull);
}

ScoreEntry entry_of(std::optional<Kind> kind, const wear::BacktestScores& scores) {
  return {kind_id(kind), kind_title(kind), entry_words(kind, scores), scores.coverage, scores.crps};
}

template <class Made>
std::vector<Made> for_all_and_each(const wear::Backtest& test,
                                   Made (*make)(std::optional<Kind>, const wear::BacktestScores&)) {
  std::vector<Made> made{make(std::nullopt, test.all)};
  for (const auto& [kind, scores] : test.kinds) made.push_back(make(kind, scores));
  return made;
}

}  // namespace

std::vector<Column> score_columns() {
  std::vector<Column> columns{
      {said("Parts"), 9, Align::left, ""},
      {said("Forecasts"), 8, Align::right,
       said("A part counts once for each day of the test on which it was in use; one that has not "
            "worn "
            "out counts as far as it got")},
      {said("Worn out"), 8, Align::right, said("Of these, how many have worn out since")},
      {said("50 % span held"), 14, Align::right,
       said("Part of the endings within the span that was to hold 50 %, with its 95 % interval")},
      {said("80 % span held"), 14, Align::right,
       said("Part of the endings within the span that was to hold 80 %, with its 95 % interval")},
      {said("95 % span held"), 14, Align::right,
       said("Part of the endings within the span that was to hold 95 %, with its 95 % interval")},
      {said("Spans"), 13, Align::left,
       said("What the 80 % spans are by that. About right: the interval holds 80 % and is at most "
            "15 "
            "points wide, or differs by 5 points at most")},
      {said("Error, days"), 9, Align::right,
       said("Mean error of Sparewell's forecasts (CRPS within the horizon); less is better")},
      {said("Calendar"), 9, Align::right,
       said("Mean error in days of one fixed interval for each kind, the median calendar life")},
      {said("One law"), 9, Align::right,
       said("Mean error in days of one Weibull law of calendar life for each kind, the same for "
            "all")},
      {said("Against calendar"), 10, Align::right,
       said("Sparewell's error against that of the fixed calendar interval")}};
  // Numbers have room to give and to take, because their titles are wider.
  for (auto& column : columns) {
    if (column.width < 12 && column.align == Align::right) column.stretch = 1;
  }
  return columns;
}

std::vector<TableRow> score_rows(const wear::Backtest& test) {
  return for_all_and_each<TableRow>(test, row_of);
}

std::vector<ScoreEntry> score_entries(const wear::Backtest& test) {
  return for_all_and_each<ScoreEntry>(test, entry_of);
}

}  // namespace sparewell::desk
