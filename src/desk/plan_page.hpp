/// The page "Plan": what the order policy saves beside common ways of ordering.
#pragma once

#include <string>
#include <vector>

#include "desk/play_chart.hpp"
#include "desk/policy_play.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

class PlanPage {
 public:
  PlanPage();

  void show_play(PolicyPlayPtr play);
  /// Past and futures, each currency: "The last 12 months, EUR". Empty without a result.
  [[nodiscard]] std::vector<std::string> choices() const;
  /// One of choices().
  void choose(std::size_t choice);
  [[nodiscard]] std::size_t chosen() const { return chosen_; }

  /// True when there is a result to show.
  [[nodiscard]] bool played() const { return play_ && *play_; }
  /// What ours saves; or why there is no result.
  [[nodiscard]] std::string headline() const;
  /// What targets by cost would save; "" without a result.
  [[nodiscard]] std::string by_cost() const;
  /// How the play goes and what it leaves out; before a play what it is for.
  [[nodiscard]] std::string grounds() const;
  /// One row for each step worth looking at; min-max on its best steps.
  [[nodiscard]] Table& runs() { return runs_; }
  /// The row of ours at the present target; "" without a result.
  [[nodiscard]] std::string present_id() const;
  /// The same, drawn: ours, by cost, min-max, order when empty.
  [[nodiscard]] const std::vector<PlayCurve>& curves() const { return curves_; }
  /// "Money in stock, EUR".
  [[nodiscard]] std::string money_title() const;

 private:
  [[nodiscard]] const supply::play::Played* shown() const;
  void fill();

  PolicyPlayPtr play_;
  std::size_t chosen_ = 0;
  Table runs_;
  std::vector<PlayCurve> curves_;
};

}  // namespace sparewell::desk
