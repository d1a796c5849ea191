/// What today's orders would be under another service target, after waiting, or within a budget,
/// beside ordering today by the clinic's settings. Nothing of it is written.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"
#include "supply/what_if.hpp"

namespace sparewell::desk {

inline constexpr double least_target_percent = 80;
inline constexpr double most_target_percent = 99.5;
inline constexpr double target_step_percent = 0.5;
inline constexpr int most_wait_days = 28;

/// Where the sliders stand.
struct SliderSetting {
  double target_percent = 95;
  int wait_days = 0;
  std::optional<Money> budget;

  friend bool operator==(const SliderSetting&, const SliderSetting&) = default;
};

/// Works settings out, away from the window. What does not depend on target and budget is kept for
/// the days of waiting that were asked for last. One thread at a time.
class DecisionBench {
 public:
  explicit DecisionBench(DayPtr day) : day_{std::move(day)} {}
  /// The same as supply::propose and supply::what_if under policy(setting).
  [[nodiscard]] std::shared_ptr<const supply::DecidedOrders> decide(const SliderSetting& setting);

 private:
  DayPtr day_;
  std::vector<wear::LifeOfUnit> lives_;
  bool began_ = false;
  /// By the day of the order, the one asked for last at the end.
  std::vector<std::pair<Date, std::unique_ptr<supply::OrderOutlook>>> outlooks_;
};

/// The policy of a setting: the clinic's where the slider was not moved. A target that was moved
/// goes before the costs from which the clinic lets it follow.
[[nodiscard]] supply::OrderPolicy policy(const SliderSetting& setting, const Day& day);

class OrderSliders {
 public:
  OrderSliders();

  /// Puts the sliders back to the clinic's settings.
  void show(DayPtr day);
  /// Where the clinic's settings put them; the budget is the one that today's orders keep to.
  [[nodiscard]] const SliderSetting& usual() const { return usual_; }
  [[nodiscard]] const SliderSetting& setting() const { return setting_; }
  [[nodiscard]] bool moved() const { return !(setting_ == usual_); }
  void set(const SliderSetting& setting);

  /// The least target of the slider: lower than least_target_percent where the clinic's is.
  [[nodiscard]] double least_target() const;
  /// Whole steps of the budget slider; at the last one there is no budget.
  [[nodiscard]] int budget_steps() const { return budget_steps_; }
  [[nodiscard]] int budget_step() const;  ///< where the setting stands
  [[nodiscard]] std::optional<Money> budget_at(int step) const;
  /// In whole units of the clinic's currency.
  [[nodiscard]] double budget_unit() const { return budget_unit_; }
  [[nodiscard]] std::string target_words() const;
  [[nodiscard]] std::string wait_words() const;
  [[nodiscard]] std::string budget_words() const;
  /// The budget as it is typed: "500.00"; "" for none.
  [[nodiscard]] std::string budget_text() const;
  /// No budget where nothing is written. Refuses what is no amount in the clinic's currency.
  [[nodiscard]] Expected<std::optional<Money>> read_budget(const std::string& text) const;

  using DecidedPtr = std::shared_ptr<const supply::DecidedOrders>;
  /// The orders by the settings, and those of `setting`.
  void answer(DecidedPtr usual, DecidedPtr of_setting, const SliderSetting& setting);
  /// The sliders were put back.
  void forget_answer() { decided_.reset(); }
  /// The orders as the sliders say; nullptr while they stand at the settings.
  [[nodiscard]] const DecidedPtr& decided() const { return decided_; }
  /// One measure a row: by the settings, by the sliders, the difference in words.
  [[nodiscard]] const Table& table() const { return table_; }
  /// What the sliders change, in one or two sentences.
  [[nodiscard]] std::string summary() const;
  /// Only the budget differs, so that today's orders can be made to keep to it.
  [[nodiscard]] bool only_budget() const;
  [[nodiscard]] static std::string caution();

 private:
  DayPtr day_;
  SliderSetting usual_;
  SliderSetting setting_;
  SliderSetting answered_;
  int budget_steps_ = 1;
  double budget_unit_ = 1;
  DecidedPtr by_settings_;
  DecidedPtr decided_;
  Table table_;
};

}  // namespace sparewell::desk
