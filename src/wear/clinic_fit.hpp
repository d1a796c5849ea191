/// Learns the clinic's own wear from its history: maximum a posteriori, one kind at a time.
#pragma once

#include <map>
#include <string>
#include <vector>

#include <Eigen/Core>

#include "clinic/clinic.hpp"
#include "wear/factors.hpp"
#include "wear/other_endings.hpp"
#include "wear/priors.hpp"

namespace sparewell::wear {

/// The fitted law of one kind: X ~ Weibull(shape, scale of the material), in days of reference use.
struct KindLife {
  Kind kind = Kind::liner;
  double shape = 1;
  /// Days of reference use; every material that has a prior of its own or is in the catalogue. One
  /// without any wear in the data keeps the median of its prior.
  std::map<Material, double> scale;
  FactorVector beta{};  ///< log wear rate for one more of each factor
  /// Variance of the personal multiplier on the hazard, which has mean 1 and is shared by all units
  /// of the kind that one patient wore; 0: patients do not differ.
  double theta = 0;
  /// Of (log shape, log scale of each material in the order of the map, beta, log theta), from the
  /// curvature at the maximum; carried into dates by the work on parameter uncertainty.
  Eigen::MatrixXd covariance;
  int units = 0;           ///< that were worn at all, in use or ended
  int wear_endings = 0;    ///< of these, ended by wear; all others are right-censored
  bool converged = false;  ///< false also when the shape had to be held at its largest value, 50
  std::string note;        ///< empty, or one sentence that says why the search stopped early
};

struct ClinicLife {
  std::map<Kind, KindLife> kinds;  ///< one for every Kind
  /// Endings that are not wear. A kind that is not there has none.
  std::map<Kind, OtherEndings> others;
};

/// Days of reference use. Throws std::out_of_range for a material that was not fitted.
[[nodiscard]] double scale_days(const KindLife& life, Material material);

/// Maximum a posteriori: each unit worn adds the Weibull density of its wear age at a wear ending,
/// and the chance to have lasted that long otherwise, marginal over the personal multiplier (see
/// life_likelihood.hpp, which also says where left truncation and item effects enter); beliefs are
/// normal in log shape, log median, beta and log theta. `clinic` is taken as it was known at the
/// end of `today`, whether or not as_of was applied. Never returns NaN. Throws
/// std::invalid_argument for a prior that is not sane; kinds and factors without a prior get a
/// vague one (see kind_prior.hpp).
[[nodiscard]] ClinicLife fit_clinic(const Clinic& clinic, const PriorTable& priors, Date today);

}  // namespace sparewell::wear
