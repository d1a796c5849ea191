#include <array>
#include <random>

#include <doctest/doctest.h>

#include "wear/kind_posterior.hpp"

namespace derivatives_test {

using namespace sparewell;
using namespace sparewell::wear;
using doctest::Approx;

namespace {

/// Central difference of order eight, exact to about 1e-11 for functions of the order of one.
template <class Function>
auto slope(const Function& f, const Eigen::VectorXd& at, Eigen::Index i) {
  const double h = 0.02;
  const auto moved = [&](double by) {
    Eigen::VectorXd to = at;
    to[i] += by * h;
    return f(to);
  };
  using Value = decltype(f(at));
  const Value d1 = moved(1) - moved(-1);
  const Value d2 = moved(2) - moved(-2);
  const Value d3 = moved(3) - moved(-3);
  const Value d4 = moved(4) - moved(-4);
  return Value{(d1 * (4.0 / 5) - d2 * (1.0 / 5) + d3 * (4.0 / 105) - d4 * (1.0 / 280)) / h};
}

/// Lives of one to four spans under random factors, of two items; some entered when worn already.
LifeLikelihood some_lives(Grouping grouping = Grouping::none) {
  std::minstd_rand0 random{7};
  std::uniform_real_distribution<double> uniform{0, 1};
  LifeLikelihood likelihood{2, factor_count, grouping};
  for (int i = 0; i < 40; ++i) {
    const std::size_t spans = 1 + static_cast<std::size_t>(i) % 4;
    std::vector<double> log_days;
    std::vector<double> factors;
    for (std::size_t s = 0; s < spans; ++s) {
      log_days.push_back(std::log(20 + 150 * uniform(random)));
      for (std::size_t f = 0; f < factor_count; ++f) factors.push_back(2 * uniform(random) - 1);
    }
    const std::vector<double> at_end(factors.end() - factor_count, factors.end());
    ObservedLife life{static_cast<std::size_t>(i) % 2,    i % 3 != 0, log_days, factors, at_end,
                      static_cast<std::size_t>(i * i) % 7};
    const std::array<double, 1> entered{std::log(0.5) + log_days[0]};
    if (i % 5 == 0) {
      life.entry_log_days = entered;
      life.entry_factors = std::span{factors}.first(factor_count);
    }
    likelihood.add(life);
  }
  return likelihood;
}

KindPrior some_prior() {
  KindPrior prior;
  prior.log_shape = {std::log(2.0), 0.3};
  prior.materials = {Material::silicone, Material::urethane};
  prior.log_median = {{std::log(200.0), 0.5}, {std::log(300.0), 0.4}};
  prior.beta.fill({0.1, 0.3});
  prior.log_theta = {std::log(0.3), 0.6};
  prior.log_item_spread = {std::log(0.1), 0.6};
  return prior;
}

Eigen::VectorXd some_point() {
  Eigen::VectorXd theta(9);
  theta << 0.4, 5.3, 5.6, 0.1, -0.2, 0.3, 0.05, -0.4, 0.25;
  return theta;
}

Eigen::VectorXd with_log_theta(double log_theta) {
  Eigen::VectorXd theta(10);
  theta << some_point(), log_theta;
  return theta;
}

Eigen::VectorXd with_materials(double log_theta, double first, double second) {
  Eigen::VectorXd at(12);
  at << with_log_theta(log_theta), first, second;
  return at;
}

void check_derivatives(const Objective& objective, const Eigen::VectorXd& at) {
  const Derivatives exact = objective.derivatives(at);
  CHECK(exact.value == Approx(objective.value(at)).epsilon(1e-12));
  CHECK(exact.hessian.isApprox(exact.hessian.transpose(), 1e-14));
  const double size = exact.hessian.cwiseAbs().maxCoeff();
  for (Eigen::Index i = 0; i < at.size(); ++i) {
    const double gradient = slope([&](const auto& to) { return objective.value(to); }, at, i);
    CHECK(std::abs(exact.gradient[i] - gradient) < 1e-8 * size);
    const Eigen::VectorXd column = slope(
        [&](const auto& to) { return Eigen::VectorXd{objective.derivatives(to).gradient}; }, at, i);
    CHECK((exact.hessian.col(i) - column).cwiseAbs().maxCoeff() < 1e-8 * size);
  }
}

}  // namespace

TEST_CASE("Gradient and Hessian of the likelihood are those of its value") {
  check_derivatives(some_lives(), some_point());
}

TEST_CASE("With a shared multiplier they are too, for every size of its variance") {
  const LifeLikelihood lives = some_lives(Grouping::shared_multiplier);
  for (const double theta : {1e-4, 0.004, 0.02, 0.3, 2.0, 50.0}) {
    CAPTURE(theta);
    check_derivatives(lives, with_log_theta(std::log(theta)));
  }
}

TEST_CASE("As the multiplier's variance goes to 0 the likelihood is that without multiplier") {
  const LifeLikelihood shared = some_lives(Grouping::shared_multiplier);
  const Derivatives plain = some_lives().derivatives(some_point());
  for (const double log_theta : {-30.0, -100.0, -700.0, -1e6}) {
    const Derivatives near = shared.derivatives(with_log_theta(log_theta));
    CHECK(near.value == Approx(plain.value).epsilon(1e-12));
    CHECK(near.gradient.head(9).isApprox(plain.gradient, 1e-10));
    CHECK(near.hessian.topLeftCorner(9, 9).isApprox(plain.hessian, 1e-10));
    CHECK(std::abs(near.gradient[9]) < 1e-9);
    CHECK(near.hessian.allFinite());
  }
}

TEST_CASE("Gradient and Hessian of the posterior are those of its value") {
  const LifeLikelihood lives = some_lives(Grouping::shared_multiplier);
  const KindPrior prior = some_prior();
  const std::vector<Eigen::Index> material_of{1, 0};
  check_derivatives(KindPosterior{prior, lives, material_of, 0.2}, with_materials(-0.7, 5.2, 5.7));
}

TEST_CASE("The gradient of the prior vanishes at its mode") {
  const LifeLikelihood none{2, factor_count, Grouping::shared_multiplier};
  const KindPrior prior = some_prior();
  const std::vector<Eigen::Index> material_of{1, 0};
  const KindPosterior posterior{prior, none, material_of, 0.2};
  CHECK(posterior.derivatives(posterior.prior_mode()).gradient.norm() < 1e-12);
}

TEST_CASE("A life cut into spans with the same factors counts as one span") {
  const std::vector<double> z(factor_count, 0.3);
  std::vector<double> twice = z;
  twice.insert(twice.end(), z.begin(), z.end());
  LifeLikelihood whole{1, factor_count};
  whole.add({0, true, std::vector<double>{std::log(150.0)}, z, z});
  LifeLikelihood cut{1, factor_count};
  cut.add({0, true, std::vector<double>{std::log(50.0), std::log(100.0)}, twice, z});
  Eigen::VectorXd theta(8);
  theta << 0.4, 5.3, 0.1, -0.2, 0.3, 0.05, -0.4, 0.25;
  const Derivatives a = whole.derivatives(theta);
  const Derivatives b = cut.derivatives(theta);
  CHECK(a.value == Approx(b.value));
  CHECK(a.gradient.isApprox(b.gradient, 1e-12));
  CHECK(a.hessian.isApprox(b.hessian, 1e-12));
}

}  // namespace derivatives_test
