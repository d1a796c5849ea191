#include <array>
#include <cmath>
#include <map>
#include <tuple>
#include <unordered_map>

#include "wear/exposure.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::wear {
namespace {

/// The laws of one kind side by side: first the best estimate, then the draws.
struct Laws {
  const KindLife* best = nullptr;
  Eigen::ArrayXd shape;
  Eigen::ArrayXXd log_scale;  ///< columns as in LawDraws
  Eigen::ArrayXXd beta;       ///< a column a factor
  Eigen::ArrayXd theta;

  [[nodiscard]] Eigen::Index count() const { return shape.size(); }
};

Laws laws_of(const KindLife& life) {
  const LawDraws& draws = life.draws;
  const Eigen::Index n = 1 + draws.count();
  Laws laws{&life, Eigen::ArrayXd(n),
            Eigen::ArrayXXd(n, std::ssize(life.scale) + std::ssize(life.item_scale)),
            Eigen::ArrayXXd(n, static_cast<Eigen::Index>(factor_count)), Eigen::ArrayXd(n)};
  laws.shape[0] = life.shape;
  Eigen::Index column = 0;
  for (const auto& [material, scale] : life.scale) laws.log_scale(0, column++) = std::log(scale);
  for (const auto& [item, scale] : life.item_scale) laws.log_scale(0, column++) = std::log(scale);
  for (std::size_t f = 0; f < factor_count; ++f) {
    laws.beta(0, static_cast<Eigen::Index>(f)) = life.beta[f];
  }
  laws.theta[0] = life.theta;
  if (draws.count() == 0) return laws;
  laws.shape.tail(n - 1) = draws.shape;
  laws.log_scale.bottomRows(n - 1) = draws.log_scale;
  laws.beta.bottomRows(n - 1) = draws.beta;
  laws.theta.tail(n - 1) = draws.theta;
  return laws;
}

/// exp(beta . z) under each law.
LawArray wear_rates(const Laws& laws, const FactorVector& factors) {
  LawArray sum = LawArray::Zero(laws.count());
  for (std::size_t f = 0; f < factor_count; ++f) {
    if (factors[f] != 0) sum += laws.beta.col(static_cast<Eigen::Index>(f)) * factors[f];
  }
  return sum.exp();
}

LawArray wear_ages(const Laws& laws, const std::vector<WearSpan>& spans) {
  LawArray ages = LawArray::Zero(laws.count());
  for (const WearSpan& span : spans) ages += span.days * wear_rates(laws, span.factors);
  return ages;
}

/// Cumulative hazard at these wear ages of the item in a column.
LawArray hazards(const Laws& laws, const LawArray& ages, Eigen::Index column) {
  return (laws.shape * (ages.log() - laws.log_scale.col(column))).exp();
}

/// What the units of one kind tell of the patient who wears one today.
struct History {
  bool in_use = false;
  double endings = 0;
  Eigen::ArrayXd hazard;  ///< cumulative, summed over the units; under each law
};

class Histories {
 public:
  void expect(const PatientRef& patient, Kind kind, Eigen::Index laws) {
    History& history = at(by_patient_[patient], kind);
    history.in_use = true;
    history.hazard = Eigen::ArrayXd::Zero(laws);
  }

  /// Null unless it is expected.
  [[nodiscard]] History* find(const PatientRef& patient, Kind kind) {
    const auto found = by_patient_.find(patient);
    if (found == by_patient_.end()) return nullptr;
    History& history = at(found->second, kind);
    return history.in_use ? &history : nullptr;
  }

 private:
  using ByKind = std::array<History, 7>;
  static_assert(static_cast<std::size_t>(Kind::sock) + 1 == std::tuple_size_v<ByKind>);
  static History& at(ByKind& of_patient, Kind kind) {
    return of_patient[static_cast<std::size_t>(kind)];
  }

  std::unordered_map<PatientRef, ByKind> by_patient_;
};

class Forecaster {
 public:
  Forecaster(const Clinic& clinic, const ClinicLife& fitted, Date today)
      : clinic_{clinic},
        others_{fitted.others},
        today_{today},
        index_{clinic},
        exposures_{clinic, index_, today, fitted.records_begin} {
    for (const auto& [kind, life] : fitted.kinds) laws_.emplace(kind, laws_of(life));
  }

  [[nodiscard]] std::vector<LifeOfUnit> lives() {
    expect_patients();
    add_histories();
    std::vector<LifeOfUnit> lives;
    for (std::size_t i = 0; i < clinic_.units.size(); ++i) {
      const Unit& unit = clinic_.units[i];
      const Item* item = index_.item(unit.item);
      if (item && unit.in_use_on(today_)) {
        lives.push_back({i, life_of(i, unit, *item), of_kind(others_, item->kind)});
      }
    }
    return lives;
  }

 private:
  void expect_patients() {
    for (const Unit& unit : clinic_.units) {
      const Item* item = index_.item(unit.item);
      if (item && unit.in_use_on(today_)) {
        histories_.expect(unit.patient, item->kind, laws_.at(item->kind).count());
      }
    }
  }

  /// Adds to the histories what every unit has been through, and keeps the wear ages of those in
  /// use.
  void add_histories() {
    for (std::size_t i = 0; i < clinic_.units.size(); ++i) {
      const Unit& unit = clinic_.units[i];
      const Item* item = index_.item(unit.item);
      if (!item || unit.issued_on > today_) continue;
      History* history = histories_.find(unit.patient, item->kind);
      if (!history) continue;
      const Exposure exposure = exposures_.of(unit, item->kind);
      if (exposure.spans.empty()) continue;  // never worn: says nothing about wear
      const Laws& laws = laws_.at(item->kind);
      const Eigen::Index column = scale_column(*laws.best, *item);
      const LawArray ages = wear_ages(laws, exposure.spans);
      history->hazard += hazards(laws, ages, column);
      if (!exposure.before_entry.empty()) {
        history->hazard -= hazards(laws, wear_ages(laws, exposure.before_entry), column);
      }
      history->endings += exposure.worn_out ? 1 : 0;
      if (unit.in_use_on(today_)) ages_.emplace(i, ages);
    }
  }

  [[nodiscard]] UnitLife life_of(std::size_t position, const Unit& unit, const Item& item) {
    const Laws& laws = laws_.at(item.kind);
    const Eigen::Index column = scale_column(*laws.best, item);
    const History& history = *histories_.find(unit.patient, item.kind);
    const auto known = ages_.find(position);
    const LawArray ages =
        known == ages_.end() ? LawArray{LawArray::Zero(laws.count())} : LawArray{known->second};
    const auto [future, rates] = future_of(laws, unit, item.kind);
    const UnitLife best{today_,
                        ages[0],
                        laws.best->shape,
                        scale_days(*laws.best, item),
                        future,
                        Multiplier::after(laws.best->theta, history.endings, history.hazard[0])};
    const Eigen::Index draws = laws.count() - 1;
    if (draws == 0) return best;
    const LawArray precision = laws.theta.tail(draws).inverse();
    return best.averaged_over({ages.tail(draws), laws.shape.tail(draws),
                               laws.log_scale.col(column).tail(draws), precision + history.endings,
                               precision + history.hazard.tail(draws), rates.bottomRows(draws)});
  }

  struct Future {
    std::vector<RateSpan> best;
    Eigen::ArrayXXd rates;  ///< under each law, a column a span
  };

  [[nodiscard]] Future future_of(const Laws& laws, const Unit& unit, Kind kind) const {
    const auto& usage = exposures_.usage().spans(unit.patient);
    const double share = exposures_.alternation().share_on(unit, kind, today_);
    const std::size_t first = span_on(usage, today_);
    Future future{{}, Eigen::ArrayXXd(laws.count(), static_cast<Eigen::Index>(usage.size() - first))};
    for (std::size_t i = first; i < usage.size(); ++i) {
      const auto span = static_cast<Eigen::Index>(i - first);
      future.rates.col(span) = share * wear_rates(laws, usage[i].factors);
      const Date from = i == first ? std::min(today_, usage[i].from) : usage[i].from;
      future.best.push_back({from, future.rates(0, span)});
    }
    return future;
  }

  const Clinic& clinic_;
  const std::map<Kind, OtherEndings>& others_;
  Date today_;
  ClinicIndex index_;
  Exposures exposures_;
  std::map<Kind, Laws> laws_;
  Histories histories_;
  std::unordered_map<std::size_t, Eigen::ArrayXd> ages_;  ///< by position in Clinic::units
};

}  // namespace

std::vector<LifeOfUnit> lives_of_units_in_use(const Clinic& clinic, const ClinicLife& fitted,
                                              Date today) {
  return Forecaster{clinic, fitted, today}.lives();
}

}  // namespace sparewell::wear
