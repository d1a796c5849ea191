/// The log posterior of a kind once more, written plainly from its definition and differentiated
/// automatically (forward mode, nested for the Hessian), beside KindPosterior.
#include <array>
#include <cmath>
#include <numbers>
#include <random>

#include <Eigen/Core>
#include <doctest/doctest.h>
#include <unsupported/Eigen/AutoDiff>

#include "wear/kind_posterior.hpp"

namespace automatic_derivatives_test {

using namespace sparewell;
using namespace sparewell::wear;

namespace {

constexpr int items = 3;
constexpr int materials = 2;
constexpr int parameters = 1 + items + static_cast<int>(factor_count) + 1 + materials;
const std::vector<Eigen::Index> material_of{1, 0, 1};

using Gradient = Eigen::Matrix<double, parameters, 1>;
using Once = Eigen::AutoDiffScalar<Gradient>;
using Twice = Eigen::AutoDiffScalar<Eigen::Matrix<Once, parameters, 1>>;

struct Span {
  double days;
  FactorVector z;
};

struct Life {
  std::size_t item;
  std::size_t patient;
  bool worn_out;
  std::vector<Span> spans;
  FactorVector at_end;
  std::vector<Span> before_entry;
};

template <class T>
struct Parameters {
  T shape;
  std::array<T, items> item_scale;
  std::array<T, factor_count> beta;
  T theta;
  std::array<T, materials> material_scale;
};

template <class T>
T log_rate(const FactorVector& z, const Parameters<T>& p) {
  T sum(0.0);
  for (std::size_t f = 0; f < factor_count; ++f) sum = sum + p.beta[f] * T(z[f]);
  return sum;
}

template <class T>
T wear_age(const std::vector<Span>& spans, const Parameters<T>& p) {
  T age(0.0);
  for (const Span& span : spans) {
    const T rate = exp(log_rate(span.z, p));
    age = age + rate * T(span.days);
  }
  return age;
}

/// (x / scale)^shape
template <class T>
T cumulative_hazard(const T& age, const T& scale, const T& shape) {
  const T log_share = log(T(age / scale));
  return exp(T(shape * log_share));
}

/// What one patient's lives add: the hazards at the wear endings with the patient's multiplier Z
/// integrated out over Gamma(1/theta, 1/theta),
///   prod h_i * Gamma(1/theta + D) / Gamma(1/theta) * (1/theta)^(1/theta) / (1/theta + H)^(1/theta
///   + D).
template <class T>
T log_likelihood_of_patient(const std::vector<Life>& lives, std::size_t patient,
                            const Parameters<T>& p) {
  T sum(0.0);
  T hazard(0.0);
  int endings = 0;
  const T precision = T(1.0) / p.theta;
  for (const Life& life : lives) {
    if (life.patient != patient) continue;
    const T& scale = p.item_scale[life.item];
    const T age = wear_age(life.spans, p);
    hazard = hazard + cumulative_hazard(age, scale, p.shape);
    if (!life.before_entry.empty()) {
      hazard = hazard - cumulative_hazard(T(wear_age(life.before_entry, p)), scale, p.shape);
    }
    if (!life.worn_out) continue;
    // Weibull hazard of the wear age, times how fast that grows when it ends.
    const T share = age / scale;
    const T log_share = log(share);
    const T rate = p.shape / scale;
    sum = sum + log(rate);
    sum = sum + (p.shape - T(1.0)) * log_share;
    sum = sum + log_rate(life.at_end, p);
    sum = sum + log(T(precision + T(endings)));
    ++endings;
  }
  sum = sum + precision * log(precision);
  const T exponent = precision + T(endings);
  const T total = precision + hazard;
  sum = sum - exponent * log(total);
  return sum;
}

template <class T>
T log_normal(const T& value, const T& mean, double spread) {
  const T off = (value - mean) / T(spread);
  return T(-0.5) * off * off;
}

template <class T>
T log_prior(const KindPrior& prior, double item_spread, const Parameters<T>& p) {
  T sum = log_normal(T(log(p.shape)), T(prior.log_shape.mean), prior.log_shape.spread);
  sum = sum + log_normal(T(log(p.theta)), T(prior.log_theta.mean), prior.log_theta.spread);
  for (std::size_t f = 0; f < factor_count; ++f) {
    sum = sum + log_normal(p.beta[f], T(prior.beta[f].mean), prior.beta[f].spread);
  }
  for (std::size_t m = 0; m < materials; ++m) {
    // The median of a Weibull life is scale * (log 2)^(1 / shape).
    const T log_scale = log(p.material_scale[m]);
    const T log_median = log_scale + T(std::log(std::numbers::ln2)) / p.shape;
    sum = sum + log_normal(log_median, T(prior.log_median[m].mean), prior.log_median[m].spread);
  }
  for (std::size_t i = 0; i < items; ++i) {
    const T log_item = log(p.item_scale[i]);
    const T log_material = log(p.material_scale[static_cast<std::size_t>(material_of[i])]);
    sum = sum + log_normal(log_item, log_material, item_spread);
  }
  return sum;
}

struct Example {
  std::vector<Life> lives;
  std::size_t patients = 9;
  KindPrior prior;
  double item_spread = 0.15;

  template <class T>
  [[nodiscard]] T log_posterior(const Eigen::Matrix<T, parameters, 1>& at) const {
    Parameters<T> p;
    Eigen::Index next = 0;
    p.shape = exp(at[next++]);
    for (T& each : p.item_scale) each = exp(at[next++]);
    for (T& each : p.beta) each = at[next++];
    p.theta = exp(at[next++]);
    for (T& each : p.material_scale) each = exp(at[next++]);
    T sum = log_prior(prior, item_spread, p);
    for (std::size_t patient = 0; patient < patients; ++patient) {
      sum = sum + log_likelihood_of_patient(lives, patient, p);
    }
    return sum;
  }
};

KindPrior example_prior() {
  KindPrior prior;
  prior.log_shape = {std::log(1.7), 0.3};
  prior.materials = {Material::silicone, Material::urethane};
  prior.log_median = {{std::log(150.0), 0.5}, {std::log(260.0), 0.4}};
  for (std::size_t f = 0; f < factor_count; ++f) {
    prior.beta[f] = {0.05 * static_cast<double>(f), 0.2 + 0.05 * static_cast<double>(f)};
  }
  prior.log_theta = {std::log(0.3), 0.6};
  return prior;
}

/// Lives of one to four spans; every fourth was under way when the records began. With more than
/// one block of lives.
Example example(int lives) {
  std::minstd_rand0 random{29};
  const auto uniform = [&] { return static_cast<double>(random()) / 2147483647.0; };
  const auto spans = [&](int count) {
    std::vector<Span> made(static_cast<std::size_t>(count));
    for (Span& span : made) {
      span.days = 5 + 120 * uniform();
      for (double& z : span.z) z = std::floor(5 * uniform()) - 2;
    }
    return made;
  };
  Example made;
  made.prior = example_prior();
  for (int i = 0; i < lives; ++i) {
    Life life{static_cast<std::size_t>(3 * uniform()),
              static_cast<std::size_t>(9 * uniform()),
              uniform() < 0.6,
              spans(1 + i % 4),
              {},
              {}};
    life.at_end = life.spans.back().z;
    if (i % 4 == 1) {
      life.before_entry = {life.spans[0], life.spans[1]};
      life.before_entry[1].days *= uniform();
    }
    made.lives.push_back(life);
  }
  return made;
}

void flatten(const std::vector<Span>& spans, std::vector<double>& log_days,
             std::vector<double>& factors) {
  for (const Span& span : spans) {
    log_days.push_back(std::log(span.days));
    factors.insert(factors.end(), span.z.begin(), span.z.end());
  }
}

LifeLikelihood likelihood_of(const Example& example) {
  LifeLikelihood likelihood{items, factor_count, Grouping::shared_multiplier};
  for (const Life& life : example.lives) {
    std::vector<double> log_days, factors, entry_log_days, entry_factors;
    flatten(life.spans, log_days, factors);
    flatten(life.before_entry, entry_log_days, entry_factors);
    likelihood.add({life.item, life.worn_out, log_days, factors, life.at_end, life.patient,
                    entry_log_days, entry_factors});
  }
  return likelihood;
}

Gradient point(double log_shape, double log_theta) {
  Gradient at;
  at << log_shape, 5.1, 5.4, 4.9, 0.1, -0.07, 0.2, 0.05, -0.12, 0.15, log_theta, 5.0, 5.3;
  return at;
}

Derivatives automatic(const Example& example, const Gradient& at) {
  Eigen::Matrix<Twice, parameters, 1> variables;
  for (int i = 0; i < parameters; ++i) {
    variables[i].value() = Once(at[i], parameters, i);
    for (int j = 0; j < parameters; ++j) {
      variables[i].derivatives()[j] = Once(i == j ? 1.0 : 0.0);
      variables[i].derivatives()[j].derivatives().setZero();
    }
  }
  const Twice result = example.log_posterior<Twice>(variables);
  Derivatives made{result.value().value(), result.value().derivatives(),
                   Eigen::MatrixXd(parameters, parameters)};
  for (int i = 0; i < parameters; ++i) {
    made.hessian.row(i) = result.derivatives()[i].derivatives();
  }
  return made;
}

/// Each entry beside the size of its own row and column, so that none hides behind a large one.
void check_close(const Derivatives& ours, const Derivatives& theirs) {
  CHECK(std::abs(ours.value / theirs.value - 1) < 1e-10);
  const Eigen::VectorXd size = theirs.hessian.diagonal().cwiseAbs().cwiseSqrt();
  for (int i = 0; i < parameters; ++i) {
    CAPTURE(i);
    CHECK(std::abs(ours.gradient[i] - theirs.gradient[i]) <
          1e-10 * (std::abs(theirs.gradient[i]) + size[i]));
    for (int j = 0; j < parameters; ++j) {
      CAPTURE(j);
      CHECK(std::abs(ours.hessian(i, j) - theirs.hessian(i, j)) < 1e-10 * size[i] * size[j]);
    }
  }
}

}  // namespace

TEST_CASE("Value, gradient and Hessian are those that automatic differentiation finds") {
  for (const int lives : {1, 40, 700}) {
    const Example made = example(lives);
    const LifeLikelihood likelihood = likelihood_of(made);
    const KindPosterior posterior{made.prior, likelihood, material_of, made.item_spread};
    REQUIRE(posterior.layout().parameters() == parameters);
    for (const double log_shape : {-0.2, 0.5, 1.1}) {
      for (const double log_theta : {-2.5, -0.7, 1.0}) {
        CAPTURE(lives);
        CAPTURE(log_shape);
        CAPTURE(log_theta);
        const Gradient at = point(log_shape, log_theta);
        const Derivatives theirs = automatic(made, at);
        check_close(posterior.derivatives(at), theirs);
        CHECK(std::abs(posterior.value(at) / theirs.value - 1) < 1e-10);
        CHECK(std::abs(made.log_posterior<double>(at) / theirs.value - 1) < 1e-12);
      }
    }
  }
}

}  // namespace automatic_derivatives_test
