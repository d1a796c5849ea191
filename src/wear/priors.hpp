/// What is believed about lives before any of the clinic's own history is seen.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/words.hpp"
#include "wear/factors.hpp"

namespace sparewell::wear {

/// Belief about the life of one kind, or of one kind in one material. A kind has one shape: that of
/// its row without material, or of its first row when there is none.
struct LifePrior {
  Kind kind = Kind::liner;
  std::optional<Material> material;  ///< empty: any material of the kind without a row of its own
  /// Median life in days of reference use of a patient whose multiplier is 1.
  double median_days = 0;
  double median_spread = 0;  ///< standard deviation of the log of the median; above 0
  double shape = 0;          ///< Weibull shape
  double shape_spread = 0;   ///< standard deviation of the log of the shape; above 0
  std::string source;        ///< published source, common practice, or from memory
};

/// Belief about how one factor changes the life of one kind.
struct FactorPrior {
  Kind kind = Kind::liner;
  Factor factor = Factor::activity;
  double life_ratio = 1;  ///< life with one more of the factor over life without, exp(-beta)
  double spread = 0;      ///< standard deviation of beta, the log of the wear rate; above 0
  std::string source;
};

/// Belief about how much patients differ in how fast they wear out parts of one kind, beyond what
/// the factors explain: each has a multiplier on the hazard with mean 1.
struct PersonPrior {
  Kind kind = Kind::liner;
  double variance = 0;  ///< median belief about the multiplier's variance; above 0
  double spread = 0;    ///< standard deviation of the log of that variance; above 0
  std::string source;
};

/// Belief about how much the items of one kind and material differ: the standard deviation of the
/// log of their scales around that of the material.
struct ItemPrior {
  Kind kind = Kind::liner;
  double spread = 0;            ///< median belief about that standard deviation; above 0
  double spread_of_spread = 0;  ///< standard deviation of its log; above 0
  std::string source;
};

/// Belief about how often parts of one kind end for one reason that is not wear. It weighs as much
/// as so many years in use, in which per_year * weight_years such endings were seen.
struct EndingPrior {
  Kind kind = Kind::liner;
  EndReason reason = EndReason::lost;
  double per_year = 0;      ///< endings per calendar year in use; above 0
  double weight_years = 0;  ///< above 0
  std::string source;
};

struct PriorTable {
  std::vector<LifePrior> lives;
  std::vector<FactorPrior> factors;
  std::vector<PersonPrior> persons;
  std::vector<ItemPrior> items;
  std::vector<EndingPrior> endings;
};

}  // namespace sparewell::wear
