/// How far the forecasts can be trusted, in words: what a test on the clinic's own history showed.
#pragma once

#include <optional>
#include <string>

#include "desk/forecast_test.hpp"

namespace sparewell::desk {

/// What the coverage of a span says about the span.
enum class SpanVerdict {
  about_right,
  too_narrow,  ///< it holds fewer endings than it should
  too_wide,    ///< it holds more
  too_few      ///< the endings are too few to say
};

/// Coverage that differs by no more than this is called about right. Our choice: four in five or
/// three in four makes no difference to what one does.
inline constexpr int span_tolerance_percent = 5;
/// An interval of the coverage wider than this leaves open whether the span is right. Our choice.
inline constexpr int span_uncertainty_percent = 15;

/// By the 95 % interval of the coverage in whole percent, as it is shown, so that words and figures
/// agree. When it holds the level, the span is about right, or the
/// interval is too wide to say. When it does not, the span is too narrow or too wide, but for an
/// interval that differs by `span_tolerance_percent` at most.
[[nodiscard]] SpanVerdict verdict_on(const wear::Coverage& coverage, double level);
/// "about right", "too narrow", "too wide", "too few to tell".
[[nodiscard]] std::string verdict_word(SpanVerdict verdict);

/// "71 % (66 to 76)": the share with its 95 % interval.
[[nodiscard]] std::string coverage_words(const wear::Coverage& coverage);
/// "66 % less", "2 % more", "the same": our error against a peer's; "" when there is nothing to
/// compare with.
[[nodiscard]] std::string saved_words(double ours, double peer);

/// "Of 924 liner forecasts, 71 % (66 to 76) ended within their 80 % span: ...", with what that
/// says about the spans. Without a kind: of all.
[[nodiscard]] std::string span_words(const wear::Backtest& test, std::optional<Kind> kind);
/// The mean error beside those of a fixed calendar interval and of one law for the kind; "" when
/// no unit was scored.
[[nodiscard]] std::string error_words(const wear::Backtest& test, std::optional<Kind> kind);
/// How the test was done, how its figures are to be read, and that it is no guarantee.
[[nodiscard]] std::string test_words(const wear::Backtest& test);

/// One line to stand beside forecasts of the kind: how its spans did, or that they were not tested.
[[nodiscard]] std::string trust_line(const ForecastTestPtr& test, Kind kind);

}  // namespace sparewell::desk
