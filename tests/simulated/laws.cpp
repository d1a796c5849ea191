#include "simulated/laws.hpp"

#include <cmath>
#include <numbers>

#include "random.hpp"
#include "wear/kind_prior.hpp"

namespace sparewell::simulated {
namespace {

using sample::Random;

ClinicLaw ordinary_with_theta(std::string name, double theta) {
  ClinicLaw law = ordinary();
  law.name = std::move(name);
  for (KindLaw& kind : law.kinds) kind.theta = theta;
  return law;
}

KindLaw& of_kind(ClinicLaw& law, Kind kind) {
  for (KindLaw& found : law.kinds) {
    if (found.kind == kind) return found;
  }
  return law.kinds.front();
}

void set_median(KindLaw& kind, Material material, double days) {
  kind.scale_days[material] = days / std::pow(std::numbers::ln2, 1 / kind.shape);
}

}  // namespace

ClinicLaw ordinary() {
  ClinicLaw law;
  law.name = "ordinary";
  KindLaw liner{Kind::liner,
                2.4,
                {{Material::silicone, 380}, {Material::mineral_oil_gel, 230}},
                {0.13, 0.06, 0.05, -0.08, 0.2, 0.15}};
  liner.alternation = 0.3;
  KindLaw sleeve{Kind::sleeve,
                 1.8,
                 {{Material::mineral_oil_gel, 130}, {Material::neoprene, 230}},
                 {0.08, 0.25, 0.06, 0, 0.12, 0.3}};
  sleeve.worn_by = 0.7;
  KindLaw valve{
      Kind::valve, 1.3, {{Material::silicone, 400}}, {0.05, 0.02, 0.05, -0.05, 0.25, 0.1}};
  valve.worn_by = 0.5;
  KindLaw lock{Kind::lock, 2.0, {{Material::metal, 1000}}, {0.1, 0, 0.04, 0, 0.1, 0.25}};
  lock.worn_by = 0.5;
  KindLaw sock{Kind::sock, 1.7, {{Material::fabric, 140}}, {0.1, 0.05, 0.05, -0.05, 0.2, 0.1}};
  sock.alternation = 0.5;
  law.kinds = {liner, sleeve, valve, lock, sock};
  return law;
}

ClinicLaw no_frailty() {
  return ordinary_with_theta("no frailty", 0);
}

ClinicLaw strong_frailty() {
  return ordinary_with_theta("strong frailty", 0.8);
}

ClinicLaw wrong_factors() {
  ClinicLaw law = ordinary();
  law.name = "wrong factors";
  law.usage.sport_recorded = false;
  law.usage.kneeling_error_hours = 1;
  for (KindLaw& kind : law.kinds) {
    auto& beta = kind.beta;
    beta[static_cast<std::size_t>(wear::Factor::impact_sport)] = 0.5;
    beta[static_cast<std::size_t>(wear::Factor::activity)] = 0;
    beta[static_cast<std::size_t>(wear::Factor::sweating_low)] = 0;
    beta[static_cast<std::size_t>(wear::Factor::sweating_high)] = 0;
  }
  return law;
}

ClinicLaw changed_jobs() {
  ClinicLaw law = ordinary();
  law.name = "changed jobs";
  law.usage.changes_a_year = 1.5;
  law.usage.changes_are_strong = true;
  law.usage.announced = 0.5;
  return law;
}

ClinicLaw few_data() {
  ClinicLaw law = ordinary();
  law.name = "few data";
  law.years = 1.5;
  return law;
}

ClinicLaw frequent_other_endings() {
  ClinicLaw law = ordinary();
  law.name = "other endings";
  law.endings = {0.25, 0.2, 0.1, 0.1};
  return law;
}

ClinicLaw item_effects() {
  ClinicLaw law = ordinary();
  law.name = "item effects";
  for (KindLaw& kind : law.kinds) {
    kind.items_per_material = 10 / static_cast<int>(kind.scale_days.size());
    kind.item_spread = 0.2;
  }
  return law;
}

ClinicLaw left_truncation() {
  ClinicLaw law = ordinary();
  law.name = "left truncation";
  law.years = 2;
  law.years_before = 3;
  return law;
}

ClinicLaw far_from_priors() {
  ClinicLaw law = ordinary();
  law.name = "far from priors";
  KindLaw& sleeve = of_kind(law, Kind::sleeve);
  sleeve.shape = 4;
  set_median(sleeve, Material::mineral_oil_gel, 4 * 120);
  set_median(sleeve, Material::neoprene, 4 * 180);
  KindLaw& liner = of_kind(law, Kind::liner);
  liner.shape = 0.9;
  set_median(liner, Material::silicone, 300.0 / 3);
  set_median(liner, Material::mineral_oil_gel, 210.0 / 3);
  return law;
}

ClinicLaw drawn_from(const wear::PriorTable& priors, std::uint64_t seed) {
  Random random{seed, 0x1A35};
  const auto drawn = [&](const wear::Belief& belief) {
    return belief.mean + belief.spread * random.normal();
  };
  ClinicLaw law = ordinary();
  law.name = "drawn from priors";
  for (KindLaw& kind : law.kinds) {
    const wear::KindPrior prior = wear::kind_prior(priors, kind.kind, {});
    kind.shape = std::exp(drawn(prior.log_shape));
    for (std::size_t i = 0; i < prior.materials.size(); ++i) {
      const double median = std::exp(drawn(prior.log_median[i]));
      if (kind.scale_days.contains(prior.materials[i]))
        set_median(kind, prior.materials[i], median);
    }
    for (std::size_t f = 0; f < wear::factor_count; ++f) kind.beta[f] = drawn(prior.beta[f]);
    kind.theta = std::exp(drawn(prior.log_theta));
  }
  return law;
}

}  // namespace sparewell::simulated
