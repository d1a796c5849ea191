#include "wear/kind_prior.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include "wear/prior_check.hpp"

namespace sparewell::wear {
namespace {

constexpr double vague_median_days = 365;
constexpr double vague_median_spread = 0.8;
constexpr double vague_shape = 1.5;
constexpr double vague_shape_spread = 0.4;
constexpr double vague_factor_spread = 0.3;
constexpr double vague_variance = 0.2;
constexpr double vague_variance_spread = 0.7;
constexpr double vague_item_spread = 0.1;
constexpr double vague_spread_of_item_spread = 0.6;

LifePrior vague_life(Kind kind) {
  return {
      kind, std::nullopt, vague_median_days, vague_median_spread, vague_shape, vague_shape_spread,
      ""};
}

void require(const Expected<void>& sane) {
  if (!sane) throw std::invalid_argument{sane.error().sentence};
}

std::vector<LifePrior> lives_of(const PriorTable& priors, Kind kind) {
  std::vector<LifePrior> rows;
  for (const LifePrior& row : priors.lives) {
    if (row.kind != kind) continue;
    require(check_life_prior(row));
    rows.push_back(row);
  }
  if (rows.empty()) rows.push_back(vague_life(kind));
  // The row without material comes first, so that it stands for whatever has none of its own.
  std::stable_partition(rows.begin(), rows.end(),
                        [](const LifePrior& row) { return !row.material; });
  return rows;
}

Belief median_belief(const std::vector<LifePrior>& rows, Material material) {
  const auto own = std::ranges::find(rows, std::optional{material}, &LifePrior::material);
  const LifePrior& row = own == rows.end() ? rows.front() : *own;
  return {std::log(row.median_days), row.median_spread};
}

}  // namespace

KindPrior kind_prior(const PriorTable& priors, Kind kind, const std::vector<Material>& used) {
  const auto rows = lives_of(priors, kind);
  std::set<Material> materials{used.begin(), used.end()};
  for (const LifePrior& row : rows) {
    if (row.material) materials.insert(*row.material);
  }
  if (materials.empty()) materials.insert(Material::other);

  KindPrior prior;
  prior.kind = kind;
  prior.log_shape = {std::log(rows.front().shape), rows.front().shape_spread};
  for (const Material material : materials) {
    prior.materials.push_back(material);
    prior.log_median.push_back(median_belief(rows, material));
  }
  prior.beta.fill({0, vague_factor_spread});
  for (const FactorPrior& row : priors.factors) {
    if (row.kind != kind) continue;
    require(check_factor_prior(row));
    prior.beta[static_cast<std::size_t>(row.factor)] = {-std::log(row.life_ratio), row.spread};
  }
  prior.log_theta = {std::log(vague_variance), vague_variance_spread};
  for (const PersonPrior& row : priors.persons) {
    if (row.kind != kind) continue;
    require(check_person_prior(row));
    prior.log_theta = {std::log(row.variance), row.spread};
  }
  prior.log_item_spread = {std::log(vague_item_spread), vague_spread_of_item_spread};
  for (const ItemPrior& row : priors.items) {
    if (row.kind != kind) continue;
    require(check_item_prior(row));
    prior.log_item_spread = {std::log(row.spread), row.spread_of_spread};
  }
  return prior;
}

}  // namespace sparewell::wear
