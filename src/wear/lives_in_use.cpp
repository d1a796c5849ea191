#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <unordered_map>

#include "clinic/in_parallel.hpp"
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
  double endings = 0;
  LawArray hazard;  ///< cumulative, summed over the units; under each law
};

/// The units of one kind that one patient had, by position in Clinic::units.
struct Wearer {
  Kind kind = Kind::liner;
  std::vector<std::size_t> units;
  std::vector<std::size_t> places;  ///< in the result, of the units in use in their order
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

  [[nodiscard]] std::vector<LifeOfUnit> lives() const {
    std::size_t in_use = 0;
    const auto wearers = wearers_today(in_use);
    std::vector<std::optional<LifeOfUnit>> made(in_use);
    // Added up in the same order whichever thread comes first.
    std::vector<ExpectedByItem> expected((wearers.size() + wearers_at_once - 1) / wearers_at_once);
    in_parallel(expected.size(), [&](std::size_t block) {
      const std::size_t from = block * wearers_at_once;
      const std::size_t to = std::min(wearers.size(), from + wearers_at_once);
      for (std::size_t i = from; i < to; ++i) add_lives(wearers[i], made, expected[block]);
    });
    const auto spreads = law_spreads(expected);
    std::vector<LifeOfUnit> lives;
    lives.reserve(in_use);
    for (auto& life : made) {
      const auto spread = spreads.find(clinic_.units[life->unit].item);
      if (spread != spreads.end()) life->law_spread = spread->second;
      lives.push_back(std::move(*life));
    }
    return lives;
  }

 private:
  /// Of each item the units that are expected to wear out in the next near_days, under each draw.
  using ExpectedByItem = std::unordered_map<ItemCode, LawArray>;
  static constexpr std::size_t wearers_at_once = 256;
  static constexpr double near_days = 60;

  /// Standard deviations of the log of the sums.
  [[nodiscard]] static std::unordered_map<ItemCode, double> law_spreads(
      const std::vector<ExpectedByItem>& blocks) {
    ExpectedByItem sums;
    for (const auto& block : blocks) {
      for (const auto& [item, expected] : block) {
        const auto [at, is_new] = sums.try_emplace(item, expected);
        if (!is_new) at->second += expected;
      }
    }
    std::unordered_map<ItemCode, double> made;
    for (const auto& [item, sum] : sums) {
      if (!(sum > 0).all()) continue;  // nothing of it is worn
      const LawArray logs = sum.log();
      made[item] = std::sqrt((logs - logs.mean()).square().mean());
    }
    return made;
  }

  /// Everybody who has a unit in use, by kind. Counts the units in use.
  [[nodiscard]] std::vector<Wearer> wearers_today(std::size_t& in_use) const {
    std::vector<Wearer> wearers;
    std::unordered_map<PatientRef, std::array<std::size_t, 7>> numbers;  // from 1; 0: none yet
    const auto number = [&](const Unit& unit, Kind kind) -> std::size_t& {
      return numbers[unit.patient][static_cast<std::size_t>(kind)];
    };
    for (std::size_t i = 0; i < clinic_.units.size(); ++i) {
      const Unit& unit = clinic_.units[i];
      const Item* item = index_.item(unit.item);
      if (!item || unit.issued_on > today_) continue;
      std::size_t& of_patient = number(unit, item->kind);
      if (of_patient == 0) {
        wearers.push_back({item->kind, {}, {}});
        of_patient = wearers.size();
      }
      Wearer& wearer = wearers[of_patient - 1];
      wearer.units.push_back(i);
      if (unit.in_use_on(today_)) wearer.places.push_back(in_use++);
    }
    std::erase_if(wearers, [](const Wearer& wearer) { return wearer.places.empty(); });
    return wearers;
  }

  void add_lives(const Wearer& wearer, std::vector<std::optional<LifeOfUnit>>& made,
                 ExpectedByItem& expected) const {
    const Laws& laws = laws_.at(wearer.kind);
    History history{0, LawArray::Zero(laws.count())};
    std::vector<LawArray> ages;  // of the units in use
    for (const std::size_t i : wearer.units) {
      const Unit& unit = clinic_.units[i];
      const LawArray age = add_history(laws, unit, history);
      if (unit.in_use_on(today_)) ages.push_back(age);
    }
    std::size_t next = 0;
    for (const std::size_t i : wearer.units) {
      const Unit& unit = clinic_.units[i];
      if (!unit.in_use_on(today_)) continue;
      made[wearer.places[next]].emplace(LifeOfUnit{
          i, life_of(laws, unit, ages[next], history, expected), of_kind(others_, wearer.kind)});
      ++next;
    }
  }

  /// Adds what the unit has been through; returns its wear ages.
  LawArray add_history(const Laws& laws, const Unit& unit, History& history) const {
    const Exposure exposure = exposures_.of(unit, laws.best->kind);
    const LawArray ages = wear_ages(laws, exposure.spans);
    if (exposure.spans.empty()) return ages;  // never worn: says nothing about wear
    const Eigen::Index column = scale_column(*laws.best, *index_.item(unit.item));
    history.hazard += hazards(laws, ages, column);
    if (!exposure.before_entry.empty()) {
      history.hazard -= hazards(laws, wear_ages(laws, exposure.before_entry), column);
    }
    history.endings += exposure.worn_out ? 1 : 0;
    return ages;
  }

  [[nodiscard]] UnitLife life_of(const Laws& laws, const Unit& unit, const LawArray& ages,
                                 const History& history, ExpectedByItem& expected) const {
    const Item& item = *index_.item(unit.item);
    const auto [future, rates] = future_of(laws, unit, item.kind);
    const UnitLife best{
        today_,           ages[0],
        laws.best->shape, scale_days(*laws.best, item),
        future,           Multiplier::after(laws.best->theta, history.endings, history.hazard[0])};
    const Eigen::Index draws = laws.count() - 1;
    if (draws == 0) return best;
    const LawArray precision = laws.theta.tail(draws).inverse();
    const Eigen::Index column = scale_column(*laws.best, item);
    const PossibleLives lives{ages.tail(draws),
                              laws.shape.tail(draws),
                              laws.log_scale.col(column).tail(draws),
                              precision + history.endings,
                              precision + history.hazard.tail(draws),
                              rates.bottomRows(draws)};
    add_expected(lives, expected[unit.item]);
    return best.averaged_over(lives);
  }

  static void add_expected(const PossibleLives& lives, LawArray& sum) {
    const auto hazard = [&](const LawArray& age) -> LawArray {
      return (lives.shape * (age.log() - lives.log_scale)).exp();
    };
    const LawArray later = lives.wear_age + near_days * lives.rates.col(0);
    // Without a multiplier both are infinite.
    const LawArray multiplier = lives.person_rate.isFinite().select(
        lives.person_shape / lives.person_rate, LawArray::Ones(lives.count()));
    const LawArray more = (hazard(later) - hazard(lives.wear_age)) * multiplier;
    if (sum.size() == 0) sum = LawArray::Zero(lives.count());
    sum += more;
  }

  struct Future {
    std::vector<RateSpan> best;
    Eigen::ArrayXXd rates;  ///< under each law, a column a span
  };

  [[nodiscard]] Future future_of(const Laws& laws, const Unit& unit, Kind kind) const {
    const auto& usage = exposures_.usage().spans(unit.patient);
    const double share = exposures_.alternation().share_on(unit, kind, today_);
    const std::size_t first = span_on(usage, today_);
    Future future{{},
                  Eigen::ArrayXXd(laws.count(), static_cast<Eigen::Index>(usage.size() - first))};
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
};

}  // namespace

std::vector<LifeOfUnit> lives_of_units_in_use(const Clinic& clinic, const ClinicLife& fitted,
                                              Date today) {
  return Forecaster{clinic, fitted, today}.lives();
}

}  // namespace sparewell::wear
