/// Finds the maximum of a smooth function of a few parameters.
#pragma once

#include <string>

#include <Eigen/Core>

namespace sparewell::wear {

struct Derivatives {
  double value = 0;
  Eigen::VectorXd gradient;
  Eigen::MatrixXd hessian;
};

class Objective {
 public:
  virtual ~Objective() = default;
  /// May be minus infinity or not a number where the function cannot be computed.
  [[nodiscard]] virtual double value(const Eigen::VectorXd& at) const = 0;
  [[nodiscard]] virtual Derivatives derivatives(const Eigen::VectorXd& at) const = 0;
};

struct Maximum {
  Eigen::VectorXd at;       ///< the best point met; the start when nothing better was found
  Derivatives derivatives;  ///< there
  int iterations = 0;
  bool converged = false;  ///< a maximum with negative definite Hessian was reached
  std::string note;        ///< why not, in one sentence; empty when converged
};

/// Newton's method with step halving; where the Hessian is not negative definite its diagonal is
/// raised until it is (Levenberg). Expects parameters of the order of one. Stops when one more step
/// promises less than 1e-12 of the function's value, after taking it.
[[nodiscard]] Maximum maximise(const Objective& objective, Eigen::VectorXd start,
                               int most_iterations = 100);
/// The same where the derivatives at the start are known already.
[[nodiscard]] Maximum maximise(const Objective& objective, Eigen::VectorXd start,
                               Derivatives at_start, int most_iterations = 100);

}  // namespace sparewell::wear
