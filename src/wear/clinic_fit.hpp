/// Learns the clinic's own wear from its history: maximum a posteriori, one kind at a time.
#pragma once

#include <map>
#include <string>
#include <vector>

#include <Eigen/Core>

#include "clinic/clinic.hpp"
#include "wear/factors.hpp"
#include "wear/priors.hpp"

namespace sparewell::wear {

/// The fitted law of one kind: X ~ Weibull(shape, scale of the material), in days of reference use.
struct KindLife {
  Kind kind = Kind::liner;
  double shape = 1;
  std::map<Material, double> scale;  ///< days of reference use; every material of the prior or the data
  FactorVector beta{};               ///< log wear rate for one more of each factor
  /// Of (log shape, log scale of each material in the order of the map, beta), from the curvature at
  /// the maximum; carried into dates by the work on parameter uncertainty.
  Eigen::MatrixXd covariance;
  int units = 0;
  int wear_endings = 0;
  bool converged = false;
  std::string note;  ///< empty, or one sentence when the search stopped early
};

struct ClinicLife {
  std::map<Kind, KindLife> kinds;  ///< one for every Kind
};

/// `clinic` is taken as it was known at the end of `today` (see as_of). Never returns NaN.
[[nodiscard]] ClinicLife fit_clinic(const Clinic& clinic, const PriorTable& priors, Date today);

}  // namespace sparewell::wear
