/// What has been learned of how the parts of a clinic wear.
#pragma once

#include <map>
#include <optional>
#include <string>

#include <Eigen/Core>

#include "clinic/clinic.hpp"
#include "wear/factors.hpp"
#include "wear/law_draws.hpp"
#include "wear/other_endings.hpp"

namespace sparewell::wear {

/// The fitted law of one kind: X ~ Weibull(shape, scale of the item), in days of reference use.
struct KindLife {
  Kind kind = Kind::liner;
  double shape = 1;
  /// Days of reference use; every material that has a prior of its own or is in the catalogue. One
  /// without any wear in the data keeps the median of its prior.
  std::map<Material, double> scale;
  std::map<ItemCode, double> item_scale;  ///< likewise, of the items that were worn
  double item_spread = 0;  ///< standard deviation of log scales among the items of a material
  FactorVector beta{};     ///< log wear rate for one more of each factor
  /// Variance of the personal multiplier on the hazard, which has mean 1 and is shared by all units
  /// of the kind that one patient wore; 0: patients do not differ.
  double theta = 0;
  /// Of (log shape, log scale of each material in the order of the map, beta, log theta), from the
  /// curvature at the maximum.
  Eigen::MatrixXd covariance;
  LawDraws draws;          ///< laws as good as this one, for the spread of what follows from it
  int units = 0;           ///< that were worn at all, in use or ended
  int wear_endings = 0;    ///< of these, ended by wear; all others are right-censored
  /// Whether the estimates can be used as they are. False when the search stopped short of a
  /// maximum, when the shape had to be held at its largest value, 50, or when an estimate ran away
  /// (see kind_note.hpp).
  bool converged = false;
  std::string note;  ///< empty when converged, otherwise one sentence that says why not
};

struct ClinicLife {
  std::map<Kind, KindLife> kinds;  ///< one for every Kind
  /// Endings that are not wear. A kind that is not there has none.
  std::map<Kind, OtherEndings> others;
  /// The day at whose end the records begin, when units were in use before; empty when endings are
  /// recorded from the first issue on. See records_begin.hpp.
  std::optional<Date> records_begin;
};

/// Days of reference use: the item's own scale, or that of its material when it was never worn.
/// Throws std::out_of_range for a material that was not fitted.
[[nodiscard]] double scale_days(const KindLife& life, const Item& item);
[[nodiscard]] double scale_days(const KindLife& life, Material material);

/// The column of LawDraws::log_scale that holds the item. Throws like scale_days.
[[nodiscard]] Eigen::Index scale_column(const KindLife& life, const Item& item);

}  // namespace sparewell::wear
