#include "care/limb_trend.hpp"

#include <algorithm>
#include <cmath>

#include <boost/math/distributions/students_t.hpp>

#include "care/worn.hpp"

namespace sparewell::care {
namespace {

/// Without the long doubles that the library takes by default, which cost time and tell no more.
using Student = boost::math::students_t_distribution<
    double, boost::math::policies::policy<boost::math::policies::promote_double<false>>>;

constexpr double days_a_year = 365.25;
/// Of logs of circumferences.
constexpr double rounding = 1e-9;
/// The limb's own ups and downs, as a part of the circumference.
constexpr double own_scatter = 0.01;

LinePrior prior_of(bool preparatory) {
  LinePrior prior;
  prior.slope = preparatory ? -0.097 / 2 : 0;
  prior.slope_sd = preparatory ? 0.03 : 0.02;
  prior.scale = std::hypot(tape_error, own_scatter);
  prior.scale_points = 4;
  return prior;
}

double moment_of(bool preparatory, Date origin, Date day) {
  const double since = days_between(origin, day);
  return preparatory ? std::log(1 + std::max(0.0, since) / 7) : since / days_a_year;
}

/// Readings count from then on; empty: all of them.
std::optional<Date> first_that_counts(std::span<const Prosthesis> prostheses,
                                      const PatientRef& patient, const Prosthesis& worn) {
  if (worn.stage == Stage::preparatory) return worn.delivered_on;
  std::optional<Date> last_preparatory;
  const auto of_side = [&](const Prosthesis& each) {
    return each.patient == patient && each.side == worn.side &&
           each.delivered_on <= worn.delivered_on;
  };
  for (const Prosthesis& each : prostheses) {
    if (!of_side(each) || each.stage != Stage::preparatory) continue;
    last_preparatory = std::max(each.delivered_on, last_preparatory.value_or(each.delivered_on));
  }
  if (!last_preparatory) return std::nullopt;
  Date first = worn.delivered_on;
  for (const Prosthesis& each : prostheses) {
    if (of_side(each) && each.delivered_on > *last_preparatory) {
      first = std::min(first, each.delivered_on);
    }
  }
  return first;
}

}  // namespace

LimbTrend::LimbTrend(bool preparatory, Date origin, std::vector<LimbReading> readings,
                     RobustLine line)
    : preparatory_{preparatory}, origin_{origin}, readings_{std::move(readings)}, line_{line} {}

double LimbTrend::moment(Date day) const {
  return moment_of(preparatory_, origin_, day);
}

double LimbTrend::change() const {
  return std::expm1(line_.slope);
}

std::pair<double, double> LimbTrend::change_between() const {
  const double told = std::max(1e-3, line_.told);
  const Student law{line_.freedom / (told * told)};
  const double wide = boost::math::quantile(law, 0.9) * std::sqrt(line_.slope_variance);
  return {std::expm1(line_.slope - wide), std::expm1(line_.slope + wide)};
}

LimbTrend::Deviation LimbTrend::deviation(Date day) const {
  // The tape's error is known, so that the limb's own scatter is all that sigma^2 tells beyond it.
  const double all = line_.sigma * line_.sigma;
  const double own = std::max(0.0, all - tape_error * tape_error);
  const double at = moment(day);
  return {std::sqrt(line_.variance_at(at) + own), line_.freedom_at(at, own, own > 0 ? all : 0)};
}

LimbPrediction LimbTrend::on(Date day, double inner) const {
  const auto [sd, freedom] = deviation(day);
  const Student law{freedom};
  const double middle = line_.at(moment(day));
  const double wide = boost::math::quantile(law, (1 + inner) / 2) * sd;
  return {std::exp(middle), std::exp(middle - wide), std::exp(middle + wide)};
}

double LimbTrend::chance_beyond(double distance, Date day) const {
  const auto [sd, freedom] = deviation(day);
  const Student law{freedom};
  return boost::math::cdf(boost::math::complement(law, distance / sd));
}

double LimbTrend::chance_above(double cm, Date day) const {
  return chance_beyond(std::log(cm) - line_.at(moment(day)), day);
}

double LimbTrend::chance_below(double cm, Date day) const {
  return chance_beyond(line_.at(moment(day)) - std::log(cm), day);
}

double LimbTrend::chance_outside(const Item& item, Date day) const {
  double chance = 0;
  if (item.size_min_cm && *item.size_min_cm > 0) chance += chance_below(*item.size_min_cm, day);
  if (item.size_max_cm && *item.size_max_cm > 0) chance += chance_above(*item.size_max_cm, day);
  return std::min(1.0, chance);
}

std::optional<Date> LimbTrend::likely_outside(const Item& item, Date from) const {
  // Where the middle is outside the chance is above one half already, so the first day lies at or
  // before that; weeks first, then days.
  for (int week_end = 7; week_end <= most_foreseen_days + 6; week_end += 7) {
    if (!likelier_than_not(chance_outside(item, from + days{week_end}))) continue;
    for (int day = week_end - 6; day <= week_end; ++day) {
      if (likelier_than_not(chance_outside(item, from + days{day}))) return from + days{day};
    }
  }
  return std::nullopt;
}

std::optional<Date> LimbTrend::leaves(const Item& item, Date from) const {
  const auto middle_outside = [&](double middle) {
    return (item.size_min_cm && *item.size_min_cm > 0 &&
            middle < std::log(*item.size_min_cm) - rounding) ||
           (item.size_max_cm && *item.size_max_cm > 0 &&
            middle > std::log(*item.size_max_cm) + rounding);
  };
  const auto outside = [&](int ahead) {
    return middle_outside(line_.at(moment(from + days{ahead})));
  };
  // The line rises or falls all the time, so that it enters and leaves the range once at most.
  if (outside(1)) return from + days{1};
  if (!outside(most_foreseen_days)) return std::nullopt;
  int within = 1;
  int beyond = most_foreseen_days;
  while (beyond - within > 1) {
    const int middle = (within + beyond) / 2;
    (outside(middle) ? beyond : within) = middle;
  }
  return from + days{beyond};
}

std::optional<LimbTrend> limb_trend(std::span<const Prosthesis> prostheses,
                                    const PatientRef& patient, Side side,
                                    const std::vector<LimbReading>& readings, Date day) {
  if (readings.empty()) return std::nullopt;
  const Prosthesis* worn = prosthesis_in_use(prostheses, patient, side, day);
  const bool preparatory = worn != nullptr && worn->stage == Stage::preparatory;
  auto from = readings.begin();
  if (worn != nullptr) {
    if (const auto first = first_that_counts(prostheses, patient, *worn)) {
      from = std::ranges::lower_bound(readings, *first - days{casting_days}, {}, &LimbReading::day);
      if (from == readings.end()) --from;
    }
  }
  const Date origin = preparatory ? worn->delivered_on : from->day;
  std::vector<double> moments;
  std::vector<double> logs;
  for (auto at = from; at != readings.end(); ++at) {
    moments.push_back(moment_of(preparatory, origin, at->day));
    logs.push_back(std::log(at->circumference_cm));
  }
  const auto line = robust_line(moments, logs, prior_of(preparatory));
  return line ? std::optional{LimbTrend{preparatory, origin, {from, readings.end()}, *line}}
              : std::nullopt;
}

}  // namespace sparewell::care
