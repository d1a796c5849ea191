#include "simulated/oracle.hpp"

#include <cmath>
#include <optional>

#include "wear/exposure.hpp"

namespace sparewell::simulated {
namespace {

using namespace wear;

struct History {
  double endings = 0;
  double hazard = 0;
};

class Oracle {
 public:
  Oracle(const Clinic& clinic, const SimulatedClinic& made, const ClinicLaw& law)
      : clinic_{clinic},
        made_{made},
        life_{true_life(law)},
        index_{clinic_},
        until_today_{clinic_, index_, made.today} {
    if (made.records_begin) before_records_.emplace(clinic_, index_, *made.records_begin);
    for (const Unit& unit : clinic_.units) remember(unit);
  }

  [[nodiscard]] std::vector<LifeOfUnit> lives() const {
    std::vector<LifeOfUnit> lives;
    for (std::size_t i = 0; i < clinic_.units.size(); ++i) {
      const Unit& unit = clinic_.units[i];
      if (unit.in_use_on(made_.today)) lives.push_back({i, life_of(unit)});
    }
    return lives;
  }

 private:
  [[nodiscard]] const KindLife& law_of(const Unit& unit) const {
    return life_.kinds.at(index_.item(unit.item)->kind);
  }
  [[nodiscard]] double scale_of(const Unit& unit) const {
    return scale_days(law_of(unit), index_.item(unit.item)->material) *
           std::exp(made_.log_effects.at(unit.item));
  }
  [[nodiscard]] double hazard(const Unit& unit, const Exposure& exposure) const {
    const KindLife& law = law_of(unit);
    return std::pow(wear_age(exposure.spans, law.beta) / scale_of(unit), law.shape);
  }

  void remember(const Unit& unit) {
    const Kind kind = index_.item(unit.item)->kind;
    const Exposure exposure = until_today_.of(unit, kind);
    History& history = histories_[{unit.patient, kind}];
    history.endings += exposure.worn_out ? 1 : 0;
    history.hazard += hazard(unit, exposure);
    if (before_records_ && unit.issued_on < *made_.records_begin) {
      history.hazard -= hazard(unit, before_records_->of(unit, kind));
    }
  }

  [[nodiscard]] UnitLife life_of(const Unit& unit) const {
    const KindLife& law = law_of(unit);
    const History& history = histories_.at({unit.patient, law.kind});
    const double share = until_today_.alternation().share_on(unit, law.kind, made_.today);
    const auto& usage = until_today_.usage().spans(unit.patient);
    std::vector<RateSpan> rates;
    for (std::size_t i = span_on(usage, made_.today); i < usage.size(); ++i) {
      const Date from = rates.empty() ? std::min(made_.today, usage[i].from) : usage[i].from;
      rates.push_back({from, share * std::exp(log_wear_rate(usage[i].factors, law.beta))});
    }
    return {made_.today, wear_age(until_today_.of(unit, law.kind).spans, law.beta),
            law.shape,   scale_of(unit),
            rates,       Multiplier::after(law.theta, history.endings, history.hazard)};
  }

  const Clinic& clinic_;
  const SimulatedClinic& made_;
  ClinicLife life_;
  ClinicIndex index_;
  Exposures until_today_;
  std::optional<Exposures> before_records_;
  std::map<std::pair<PatientRef, Kind>, History> histories_;
};

}  // namespace

ClinicLife true_life(const ClinicLaw& law) {
  ClinicLife life;
  for (const KindLaw& kind : law.kinds) {
    KindLife of_kind;
    of_kind.kind = kind.kind;
    of_kind.shape = kind.shape;
    of_kind.scale = kind.scale_days;
    of_kind.beta = kind.beta;
    of_kind.theta = kind.theta;
    of_kind.converged = true;
    life.kinds[kind.kind] = of_kind;
  }
  return life;
}

std::vector<LifeOfUnit> oracle_lives(const SimulatedClinic& made, const ClinicLaw& law,
                                     Sight sight) {
  if (sight == Sight::records) return Oracle{made.clinic, made, law}.lives();
  Clinic seen = made.clinic;
  seen.usage = made.true_usage;
  return Oracle{seen, made, law}.lives();
}

}  // namespace sparewell::simulated
