#include "supply/new_starts.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include <boost/math/tools/minima.hpp>

namespace sparewell::supply {
namespace {

constexpr double negligible = 1e-14;

/// The first units of a kind on a side.
struct FirstUnits {
  Date on;
  std::map<ItemCode, int> pieces;
};

using Sides = std::map<std::tuple<PatientRef, Side>, Date>;

/// The day on which each side got its first prosthesis.
Sides first_deliveries(const Clinic& clinic) {
  Sides made;
  for (const Prosthesis& each : clinic.prostheses) {
    const auto [known, added] = made.try_emplace({each.patient, each.side}, each.delivered_on);
    if (!added) known->second = std::min(known->second, each.delivered_on);
  }
  return made;
}

std::map<std::tuple<PatientRef, Side, Kind>, FirstUnits> first_units(const Clinic& clinic,
                                                                     const ClinicIndex& index,
                                                                     const Sides& new_sides) {
  std::map<std::tuple<PatientRef, Side, Kind>, FirstUnits> made;
  std::vector<std::pair<const Unit*, Kind>> of_new;
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (item == nullptr || !new_sides.contains({unit.patient, unit.side})) continue;
    of_new.emplace_back(&unit, item->kind);
    const auto [first, added] =
        made.try_emplace({unit.patient, unit.side, item->kind}, FirstUnits{unit.issued_on, {}});
    if (!added) first->second.on = std::min(first->second.on, unit.issued_on);
  }
  for (const auto& [unit, kind] : of_new) {
    FirstUnits& first = made.at({unit->patient, unit->side, kind});
    if (unit->issued_on <= first.on + days{one_start_days}) ++first.pieces[unit->item];
  }
  return made;
}

}  // namespace

Pmf NewStarts::in(double ahead) const {
  if (!(starts > 0) || !(ahead > 0)) return Pmf{};
  // Beyond that the chance of none underflows, and with it all that is made from it. The count is
  // the sum of two independent ones with half the starts each.
  if (starts * std::log1p(ahead / days) > 600) {
    const Pmf half = NewStarts{starts / 2, days, pieces}.in(ahead);
    return convolve(half, half);
  }
  // The number of starts has P(n) = (a + b / n) P(n - 1).
  const double a = ahead / (days + ahead);
  const double b = (starts - 1) * a;
  std::vector<double> mass{std::exp(-starts * std::log1p(ahead / days))};
  double left = 1 - mass.front();
  // `left` keeps the rounding of many sums, so the end is also where hardly anything was added for
  // as long as one start may reach.
  const double mean = mean_in(ahead);
  std::size_t idle = 0;
  for (std::size_t n = 1; left > negligible && idle <= pieces.size(); ++n) {
    double sum = 0;
    for (std::size_t j = 1; j <= std::min(n, pieces.size()); ++j) {
      const double part = static_cast<double>(j) / static_cast<double>(n);
      sum += (a + b * part) * pieces[j - 1] * mass[n - j];
    }
    mass.push_back(sum);
    left -= sum;
    idle = sum<negligible&& static_cast<double>(n)> mean ? idle + 1 : 0;
  }
  return Pmf{std::move(mass)};
}

double NewStarts::mean_in(double ahead) const {
  double each = 0;
  for (std::size_t j = 0; j < pieces.size(); ++j) each += static_cast<double>(j + 1) * pieces[j];
  return starts / days * ahead * each;
}

double best_prior_shape(const std::vector<int>& counts, double mean) {
  // -log of the negative binomial likelihood but for terms without the shape.
  const auto surprise = [&](double log_shape) {
    const double shape = std::exp(log_shape);
    double sum = 0;
    for (const int count : counts) {
      sum -= std::lgamma(shape + count) - std::lgamma(shape) + shape * std::log(shape) -
             (shape + count) * std::log(shape + mean);
    }
    return sum;
  };
  constexpr int bits = 20;
  return std::exp(
      boost::math::tools::brent_find_minima(surprise, std::log(0.1), std::log(100.0), bits).first);
}

StartsOfClinic::StartsOfClinic(const Clinic& clinic, Date today) {
  const ClinicIndex index{clinic};
  Date from = today - days{starts_counted_days};
  if (clinic.settings.records_begin) from = std::max(from, *clinic.settings.records_begin);
  Date earliest = today;
  for (const Unit& unit : clinic.units) earliest = std::min(earliest, unit.issued_on);
  from = std::max(from, earliest);
  days_ = std::max(1, days_between(from, today));

  Sides sides = first_deliveries(clinic);
  std::erase_if(sides, [&](const auto& side) { return side.second <= from; });
  std::map<Kind, std::vector<double>> pieces;
  for (const auto& [side, first] : first_units(clinic, index, sides)) {
    if (first.on <= from || first.on > today) continue;
    auto& counts = pieces[std::get<Kind>(side)];
    for (const auto& [item, count] : first.pieces) {
      ++starts_[item];
      const auto size = static_cast<std::size_t>(count);
      if (counts.size() < size) counts.resize(size, 0.0);
      ++counts[size - 1];
    }
  }
  std::map<Kind, std::vector<int>> counts;
  for (const Item& item : clinic.items) {
    const auto found = starts_.find(item.code);
    if (item.stocked) counts[item.kind].push_back(found == starts_.end() ? 0 : found->second);
  }
  for (const auto& [kind, of_items] : counts) {
    double sum = 0;
    for (const int count : of_items) sum += count;
    if (!(sum > 0)) continue;
    const double mean = sum / static_cast<double>(of_items.size());
    OfKind made;
    made.shape = best_prior_shape(of_items, mean);
    made.rate = made.shape / (mean / days_);
    made.pieces = pieces.at(kind);
    double all = 0;
    for (const double count : made.pieces) all += count;
    for (double& count : made.pieces) count /= all;
    kinds_.emplace(kind, std::move(made));
  }
}

NewStarts StartsOfClinic::of(const Item& item) const {
  const auto kind = kinds_.find(item.kind);
  if (!item.stocked || kind == kinds_.end()) return {};
  const auto found = starts_.find(item.code);
  const int seen = found == starts_.end() ? 0 : found->second;
  return {kind->second.shape + seen, kind->second.rate + days_, kind->second.pieces};
}

}  // namespace sparewell::supply
