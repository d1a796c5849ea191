/// How the forecasts did when they were tested on the clinic's own history.
#pragma once

#include <memory>
#include <optional>

#include "clinic/refusal.hpp"
#include "wear/backtest.hpp"

namespace sparewell::desk {

/// A refusal says why the history could not be tested.
using ForecastTest = Expected<wear::Backtest>;
/// nullptr: not tested.
using ForecastTestPtr = std::shared_ptr<const ForecastTest>;

/// Scores of a kind, or of all; nullptr when no unit of the kind was in use on the test's days.
[[nodiscard]] const wear::BacktestScores* scores_of(const wear::Backtest& test,
                                                    std::optional<Kind> kind);

/// Whether a test of one clinic holds for the other: the records that forecasts are made from, and
/// tested against, are the same.
[[nodiscard]] bool same_history(const Clinic& one, const Clinic& other);

}  // namespace sparewell::desk
