/// The page "Wear": how far the forecasts can be trusted, what changes lives, and early endings.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/backtest_chart.hpp"
#include "desk/day.hpp"
#include "desk/forecast_test.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

class WearPage {
 public:
  WearPage();

  void show(DayPtr day);
  void show_test(ForecastTestPtr test);
  /// All kinds when empty; effects and early endings of other kinds are left out.
  void choose(std::optional<Kind> kind);
  [[nodiscard]] std::optional<Kind> chosen() const { return chosen_; }

  /// True when there is a result to show.
  [[nodiscard]] bool tested() const { return test_ && *test_; }
  /// How the spans of the chosen kind did; or why there is no result.
  [[nodiscard]] std::string headline() const;
  /// The errors of the chosen kind beside those of simpler rules; "" without a result.
  [[nodiscard]] std::string errors() const;
  /// How the test is done, or was done.
  [[nodiscard]] std::string grounds() const;
  /// One row for all and one a kind; its id is kind_id().
  [[nodiscard]] Table& scores() { return scores_; }
  /// The same, drawn.
  [[nodiscard]] const std::vector<ScoreEntry>& drawn() const { return drawn_; }

  /// What each usage factor does to the life of each kind, below what that rests on.
  [[nodiscard]] Table& effects() { return effects_; }

  /// Lots and items with more early endings than chance explains; lots first.
  [[nodiscard]] Table& flagged() { return flagged_; }
  /// The chosen lot or item in a sentence; "" when there is none of this id.
  [[nodiscard]] std::string flag_words(const std::string& id) const;
  /// How many lots and items were looked at and flagged, and what could not be judged.
  [[nodiscard]] std::string early_summary() const;
  /// Parts that wore out so early that hardly any do; an id is a position in Clinic::units.
  [[nodiscard]] Table& early() { return early_; }
  /// How many they are, and how many chance alone would put there.
  [[nodiscard]] std::string early_count() const;
  [[nodiscard]] std::string early_empty_words() const;
  /// Position in Clinic::units of a part in that list; empty when it is not there.
  [[nodiscard]] std::optional<std::size_t> unit_of(const std::string& early_id) const;

 private:
  DayPtr day_;
  ForecastTestPtr test_;
  std::optional<Kind> chosen_;
  Table scores_;
  std::vector<ScoreEntry> drawn_;
  Table effects_;
  Table flagged_;
  Table early_;
};

/// "all", "liner": what a row about a kind is known by.
[[nodiscard]] std::string kind_id(std::optional<Kind> kind);
[[nodiscard]] std::optional<Kind> kind_of_id(const std::string& id);
/// "All kinds", "Liners".
[[nodiscard]] std::string kind_title(std::optional<Kind> kind);
/// All kinds together, then each.
[[nodiscard]] std::vector<std::optional<Kind>> kind_choices();
/// What Table::require asks for to show rows of the kind alone.
[[nodiscard]] unsigned kind_mark(std::optional<Kind> kind);

/// What the list of effects is and with whom its lines compare.
[[nodiscard]] std::string effects_introduction();

}  // namespace sparewell::desk
