#include "wear/newton.hpp"

#include <cmath>
#include <limits>
#include <optional>

#include <Eigen/Cholesky>

#include "clinic/say.hpp"

namespace sparewell::wear {
namespace {

constexpr double promised_enough = 1e-12;
constexpr double longest_step = 3;  // exp(3): twenty-fold in one step, for log parameters
constexpr double shortest_fraction = 1e-10;

struct Step {
  Eigen::VectorXd direction;
  double promise = 0;  ///< gradient . direction: twice the gain that the quadratic model expects
  bool damped = false;
};

std::optional<Step> newton_step(const Derivatives& at) {
  const Eigen::MatrixXd curvature = -at.hessian;
  const Eigen::VectorXd diagonal = curvature.diagonal().cwiseAbs().array() + 1e-8;
  constexpr int damped_tries = 16;
  double damping = 0;
  for (int tried = 0; tried <= damped_tries; ++tried) {
    if (tried > 0) damping = tried == 1 ? 1e-4 : 10 * damping;
    Eigen::MatrixXd damped = curvature;
    damped.diagonal() += damping * diagonal;
    const Eigen::LLT<Eigen::MatrixXd> factored{damped};
    if (factored.info() != Eigen::Success) continue;
    Step step{factored.solve(at.gradient), 0, damping > 0};
    step.promise = at.gradient.dot(step.direction);
    if (!step.direction.allFinite() || !(step.promise >= 0)) continue;
    return step;
  }
  return std::nullopt;
}

bool all_finite(const Derivatives& at) {
  return std::isfinite(at.value) && at.gradient.allFinite() && at.hessian.allFinite();
}

/// Moves `best` along the step as far as the value improves enough; false when it does nowhere.
bool improve(const Objective& objective, const Step& step, Maximum& best) {
  const double value = best.derivatives.value;
  const double rounding = 16 * std::numeric_limits<double>::epsilon() * (1 + std::abs(value));
  double fraction = std::min(1.0, longest_step / step.direction.cwiseAbs().maxCoeff());
  // Most first tries succeed, so their derivatives are computed along with the value.
  Eigen::VectorXd next = best.at + fraction * step.direction;
  Derivatives there = objective.derivatives(next);
  const auto enough = [&](double reached) {
    return reached >= value + 1e-4 * fraction * step.promise - rounding;
  };
  if (!enough(there.value) || !all_finite(there)) {
    do {
      fraction /= 2;
      if (fraction < shortest_fraction) return false;
      next = best.at + fraction * step.direction;
    } while (!enough(objective.value(next)));
    there = objective.derivatives(next);
    if (!all_finite(there)) return false;
  }
  best.at = std::move(next);
  best.derivatives = std::move(there);
  ++best.iterations;
  return true;
}

}  // namespace

Maximum maximise(const Objective& objective, Eigen::VectorXd start, int most_iterations) {
  Derivatives at_start = objective.derivatives(start);
  return maximise(objective, std::move(start), std::move(at_start), most_iterations);
}

Maximum maximise(const Objective& objective, Eigen::VectorXd start, Derivatives at_start,
                 int most_iterations) {
  Maximum best;
  best.at = std::move(start);
  best.derivatives = std::move(at_start);
  if (!all_finite(best.derivatives)) {
    best.note = say("The likelihood cannot be computed where the search starts.");
    return best;
  }
  while (best.iterations < most_iterations) {
    const auto step = newton_step(best.derivatives);
    if (!step) {
      best.note = say("The likelihood is too flat to say where its maximum lies.");
      return best;
    }
    const double enough = promised_enough * (1 + std::abs(best.derivatives.value));
    const bool last = step->promise <= enough && !step->damped;
    const bool moved = step->promise > 0 && improve(objective, *step, best);
    best.converged = last;
    if (last) return best;
    if (!moved) {
      best.note =
          say("The search stalled after {} steps without reaching a maximum of the likelihood.",
              best.iterations);
      return best;
    }
  }
  best.note =
      say("The search did not reach a maximum of the likelihood in {} steps.", most_iterations);
  return best;
}

}  // namespace sparewell::wear
