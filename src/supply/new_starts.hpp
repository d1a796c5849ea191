/// Patients who begin to use an item: how many to expect, and how many pieces each is handed.
#pragma once

#include <map>
#include <optional>
#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/pmf.hpp"

namespace sparewell::supply {

/// How far back starts are counted (our choice): long enough for rare items, short enough to follow
/// a clinic that grows.
inline constexpr int starts_counted_days = 730;
/// Pieces of an item handed out within so many days of its first are one start (our choice).
inline constexpr int one_start_days = 14;

/// Starts with one item. Their rate a day is Gamma(starts, days); each start takes 1, 2, ... pieces
/// with the chances in `pieces`.
struct NewStarts {
  double starts = 0;  ///< 0: none are foreseen
  double days = 1;    ///< above 0
  std::vector<double> pieces{1.0};

  /// Pieces that new patients will need in `ahead` >= 0 days. The number of starts is negative
  /// binomial (the gamma mixture of Poisson counts); pieces are summed by Panjer's recursion
  /// (ASTIN Bulletin 12 (1981) 22-26, from memory), exactly but for rounding. Replacements of what
  /// they were handed are left out: within an order's interval they hardly occur.
  [[nodiscard]] Pmf in(double ahead) const;
  [[nodiscard]] double mean_in(double ahead) const;
};

/// Learned from a clinic's records. A start is the first unit of a kind on a patient's side, issued
/// in the last starts_counted_days, when the side's first prosthesis was delivered in that time
/// too: patients who were there before are not new. Each item's rate is shrunk to that of its
/// kind's items, by as much as their counts differ less than chance would let them: the prior's
/// shape has the largest marginal likelihood (empirical Bayes for negative binomial counts).
class StartsOfClinic {
 public:
  StartsOfClinic(const Clinic& clinic, Date today);

  /// None for items that are not stocked: those are ordered for a named patient.
  [[nodiscard]] NewStarts of(const Item& item) const;

 private:
  struct OfKind {
    double shape = 0;  ///< of the prior
    double rate = 1;   ///< of the prior, in days
    std::vector<double> pieces{1.0};
  };

  double days_;  ///< counted
  std::unordered_map<ItemCode, int> starts_;
  std::map<Kind, OfKind> kinds_;
};

/// The shape of the Gamma prior, with mean `mean`, under which Poisson counts with these rates are
/// most likely; between 0.1 and 100. `counts` not empty, mean > 0.
[[nodiscard]] double best_prior_shape(const std::vector<int>& counts, double mean);

}  // namespace sparewell::supply
