#include "desk/trust_words.hpp"

#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// The span that the sentences are about: the one that the patients' page draws.
constexpr std::size_t told = 1;
static_assert(wear::coverage_levels[told] == 0.80);

std::string forecasts_words(std::optional<Kind> kind, int count) {
  const auto number = number_words(count);
  if (!kind) {
    return say_n("{} forecast for parts of all kinds", "{} forecasts for parts of all kinds",
                 static_cast<unsigned long>(count), number);
  }
  return say_n("{} {} forecast", "{} {} forecasts", static_cast<unsigned long>(count), number,
               shown_word(*kind));
}

std::string verdict_sentence(SpanVerdict verdict) {
  switch (verdict) {
    case SpanVerdict::about_right:
      return said("the spans are about right");
    case SpanVerdict::too_narrow:
      return said("the spans are too narrow; take the dates as less sure than they are shown");
    case SpanVerdict::too_wide:
      return said("the spans are too wide; the dates are surer than they are shown");
    case SpanVerdict::too_few:
      break;
  }
  return said("too few have ended to say whether the spans are right");
}

std::string not_in_use(Kind kind) {
  return say("No {0} was in use on the days of the test, so forecasts for {1} are untested.",
             shown_word(kind), kind_plural(kind));
}

std::string with_saved(double peer, const std::string& name, double ours) {
  const auto saved = saved_words(ours, peer);
  return say("{:.1f} days with {}{}", peer, name,
             saved.empty() ? std::string{} : fmt::format(" ({})", saved));
}

}  // namespace

SpanVerdict verdict_on(const wear::Coverage& coverage, double level) {
  const auto low = std::lround(100 * coverage.low);
  const auto high = std::lround(100 * coverage.high);
  const auto wanted = std::lround(100 * level);
  if (low <= wanted && wanted <= high) {
    return high - low <= span_uncertainty_percent ? SpanVerdict::about_right : SpanVerdict::too_few;
  }
  if (low >= wanted - span_tolerance_percent && high <= wanted + span_tolerance_percent) {
    return SpanVerdict::about_right;
  }
  return high < wanted ? SpanVerdict::too_narrow : SpanVerdict::too_wide;
}

std::string verdict_word(SpanVerdict verdict) {
  switch (verdict) {
    case SpanVerdict::about_right:
      return said("about right");
    case SpanVerdict::too_narrow:
      return said("too narrow");
    case SpanVerdict::too_wide:
      return said("too wide");
    case SpanVerdict::too_few:
      break;
  }
  return said("too few to tell");
}

std::string coverage_words(const wear::Coverage& coverage) {
  return say("{:.0f} % ({:.0f} to {:.0f})", 100 * coverage.share, 100 * coverage.low,
             100 * coverage.high);
}

std::string saved_words(double ours, double peer) {
  const auto saved = wear::skill(ours, peer);
  if (!saved) return "";
  const auto percent = std::lround(100 * *saved);
  if (percent == 0) return said("the same");
  return percent > 0 ? say("{} % less", percent) : say("{} % more", -percent);
}

std::string span_words(const wear::Backtest& test, std::optional<Kind> kind) {
  const auto* scores = scores_of(test, kind);
  if (!scores || !scores->coverage[told])
    return kind ? not_in_use(*kind) : said("Nothing was tested.");
  const auto& coverage = *scores->coverage[told];
  return say("Of {}, {} ended within their 80 % span: {}.", forecasts_words(kind, scores->units),
             coverage_words(coverage),
             verdict_sentence(verdict_on(coverage, wear::coverage_levels[told])));
}

std::string error_words(const wear::Backtest& test, std::optional<Kind> kind) {
  const auto* scores = scores_of(test, kind);
  if (!scores || !scores->crps) return "";
  const auto& error = *scores->crps;
  const auto one_law = kind ? say("one law of life for all {} (Weibull)", kind_plural(*kind))
                            : std::string{said("one law of life for each kind (Weibull)")};
  return say("Mean error within {} days: {:.1f} days, against {} and {}.", test.horizon_days,
             error.sparewell,
             with_saved(error.calendar, said("a fixed calendar interval"), error.sparewell),
             with_saved(error.clinic_weibull, one_law, error.sparewell));
}

std::string test_words(const wear::Backtest& test) {
  if (test.origins.empty()) return "";
  return say(
      "Forecast from {} between {} and {} by what was known then. In brackets: the 95 % interval. "
      "What did well in the past may still be wrong: no guarantee.",
      count_words(static_cast<long long>(test.origins.size()), "day", "days"),
      date_words(test.origins.front()), date_words(test.origins.back()));
}

std::string trust_line(const ForecastTestPtr& test, Kind kind) {
  if (!test) return said("Not tested on this clinic's history yet: use Wear > Test the forecasts.");
  if (!*test) {
    return said("This clinic's history is too short to test the forecasts on: see the page Wear.");
  }
  const auto* scores = scores_of(**test, kind);
  if (!scores || !scores->coverage[told]) return not_in_use(kind);
  const auto& coverage = *scores->coverage[told];
  const auto verdict = verdict_on(coverage, wear::coverage_levels[told]);
  return say(
      "Tested on this clinic's history, no guarantee: 80 % spans held {:.0f} % of {} ({:.0f} to "
      "{:.0f}): {}.",
      100 * coverage.share, forecasts_words(kind, scores->units), 100 * coverage.low,
      100 * coverage.high, verdict_word(verdict));
}

}  // namespace sparewell::desk
