#include "wear/clinic_fit.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <unordered_map>

#include <Eigen/Eigenvalues>
#include <fmt/format.h>

#include "wear/exposure.hpp"
#include "wear/kind_posterior.hpp"

namespace sparewell::wear {
namespace {

constexpr double steepest_shape = 50;  // lives within about 2.5 % of each other

/// What one kind is estimated from, gathered in one pass over the units.
struct KindData {
  KindPrior prior;
  LifeLikelihood likelihood;
  std::unordered_map<PatientRef, std::size_t> groups;
};

std::vector<Material> materials_in_catalogue(const Clinic& clinic, Kind kind) {
  std::vector<Material> used;
  for (const Item& item : clinic.items) {
    if (item.kind == kind) used.push_back(item.material);
  }
  return used;
}

std::vector<KindData> empty_data(const Clinic& clinic, const PriorTable& priors) {
  std::vector<KindData> all;
  for (std::size_t i = 0; i < words<Kind>().size(); ++i) {
    const auto kind = static_cast<Kind>(i);
    KindPrior prior = kind_prior(priors, kind, materials_in_catalogue(clinic, kind));
    const std::size_t scales = prior.materials.size();
    all.push_back(
        {std::move(prior), LifeLikelihood{scales, factor_count, Grouping::shared_multiplier}, {}});
  }
  return all;
}

void add_exposure(const Exposure& exposure, const PatientRef& patient, Material material,
                  KindData& data) {
  if (exposure.spans.empty()) return;  // never worn: says nothing about wear
  std::vector<double> span_days;
  std::vector<double> factors;
  for (const WearSpan& span : exposure.spans) {
    span_days.push_back(span.days);
    factors.insert(factors.end(), span.factors.begin(), span.factors.end());
  }
  const std::size_t group = data.groups.try_emplace(patient, data.groups.size()).first->second;
  const auto scale = std::ranges::lower_bound(data.prior.materials, material);
  data.likelihood.add({static_cast<std::size_t>(scale - data.prior.materials.begin()),
                       exposure.worn_out, span_days, factors, exposure.at_end, group});
}

std::vector<KindData> gather(const Clinic& clinic, const PriorTable& priors, Date today) {
  const ClinicIndex index{clinic};
  const Exposures exposures{clinic, index, today};
  auto all = empty_data(clinic, priors);
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (!item || unit.issued_on > today) continue;
    add_exposure(exposures.of(unit, item->kind), unit.patient, item->material,
                 all[static_cast<std::size_t>(item->kind)]);
  }
  return all;
}

/// Inverse of the curvature, in which no direction is known less well than the vaguest prior says:
/// that only matters where the search stopped short of a maximum.
Eigen::MatrixXd covariance_at(const Derivatives& maximum, double least_precision) {
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solved{-maximum.hessian};
  const Eigen::VectorXd precisions = solved.eigenvalues().cwiseMax(0.01 * least_precision);
  return solved.eigenvectors() * precisions.cwiseInverse().asDiagonal() *
         solved.eigenvectors().transpose();
}

Maximum maximum_of(const KindPosterior& posterior, const LifeLikelihood& likelihood) {
  return maximise(posterior, likelihood.start_near(posterior.prior_mode()));
}

KindLife life_at(const Maximum& maximum, const KindPosterior& posterior, const KindData& data) {
  KindLife life;
  life.kind = data.prior.kind;
  life.shape = std::exp(maximum.at[0]);
  Eigen::Index at = 1;
  for (const Material material : data.prior.materials) {
    life.scale[material] = std::exp(maximum.at[at++]);
  }
  for (double& beta : life.beta) beta = maximum.at[at++];
  life.theta = std::exp(maximum.at[at]);
  life.covariance = covariance_at(maximum.derivatives, posterior.least_prior_precision());
  life.units = static_cast<int>(data.likelihood.lives());
  life.wear_endings = static_cast<int>(data.likelihood.wear_endings());
  life.converged = maximum.converged;
  life.note = maximum.note;
  return life;
}

KindLife fit_kind(const KindData& data) {
  const KindPosterior posterior{data.prior, data.likelihood};
  const Maximum maximum = maximum_of(posterior, data.likelihood);
  if (maximum.at[0] < std::log(steepest_shape)) return life_at(maximum, posterior, data);

  // Many lives of the same length pull the shape up without end. A belief that outweighs them holds
  // it.
  KindData held = data;
  const double endings = static_cast<double>(data.likelihood.wear_endings());
  held.prior.log_shape = {std::log(steepest_shape), 1e-3 / std::sqrt(1 + endings)};
  const KindPosterior with_shape_held{held.prior, held.likelihood};
  KindLife life = life_at(maximum_of(with_shape_held, held.likelihood), with_shape_held, held);
  life.converged = false;
  life.note = fmt::format(
      "The recorded lives of {}s are so much alike that their shape was held at {:.0f}; check "
      "whether they were replaced on fixed dates instead of when worn out.",
      word(life.kind), steepest_shape);
  return life;
}

}  // namespace

ClinicLife fit_clinic(const Clinic& clinic, const PriorTable& priors, Date today) {
  ClinicLife fitted;
  fitted.others = other_endings(clinic, priors, today);
  for (const KindData& data : gather(clinic, priors, today)) {
    fitted.kinds.emplace(data.prior.kind, fit_kind(data));
  }
  return fitted;
}

double scale_days(const KindLife& life, Material material) {
  const auto found = life.scale.find(material);
  if (found != life.scale.end()) return found->second;
  throw std::out_of_range{
      fmt::format("No life was fitted for {} of {}.", word(life.kind), word(material))};
}

}  // namespace sparewell::wear
