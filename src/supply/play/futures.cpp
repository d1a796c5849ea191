#include "supply/play/futures.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include <boost/math/special_functions/gamma.hpp>
#include <fmt/format.h>

#include "supply/demand.hpp"
#include "supply/play/draws.hpp"
#include "supply/successors.hpp"

namespace sparewell::supply::play {
namespace {

wear::OtherEndings without_changes(wear::OtherEndings others) {
  for (const EndReason reason : changing_reasons) {
    others.rates[wear::position_of(reason)].endings = 0;
  }
  return others;
}

std::uint64_t number_of_unit(const Unit& unit) {
  return number_of(fmt::format("{}|{}|{}|{}|{}|{}|{}", unit.patient.text, word(unit.side),
                               unit.item.text, unit.lot, unit.serial, iso_text(unit.issued_on),
                               unit.copy));
}

/// Cumulative hazard under a multiplier of 1.
double hazard_at(const wear::UnitLife& life, double age) {
  return std::pow(age / life.scale_days(), life.shape());
}

double wear_after(const wear::UnitLife& life, double days_ahead) {
  const Date before = life.today() + days{static_cast<int>(std::floor(days_ahead))};
  const double wear = life.wear_until(before);
  const double part = days_ahead - std::floor(days_ahead);
  return part > 0 ? wear + part * (life.wear_until(before + days{1}) - wear) : wear;
}

double drawn_multiplier(const wear::Multiplier& known, double chance) {
  if (!std::isfinite(known.shape())) return 1;
  return boost::math::gamma_p_inv(known.shape(), chance) / known.rate();
}

double rate_of(const wear::OtherEndings& others, bool same_item) {
  double rate = 0;
  for (const EndReason reason : wear::other_reasons) {
    const bool same = std::ranges::find(same_item_reasons, reason) != same_item_reasons.end();
    if (same == same_item) rate += others.of(reason).per_day();
  }
  return rate;
}

/// Days until an event of a constant rate; never without one.
double waiting_time(double rate, double chance) {
  return rate > 0 ? -std::log(chance) / rate : HUGE_VAL;
}

int whole_day(double days_ahead) {
  return static_cast<int>(std::ceil(days_ahead));
}

/// Of independent chances, the masses of how many come up.
class ChanceSum {
 public:
  void add(double chance) {
    if (!(chance > 0)) return;
    masses_.push_back(0);
    for (std::size_t n = masses_.size() - 1; n > 0; --n) {
      masses_[n] = masses_[n] * (1 - chance) + masses_[n - 1] * chance;
    }
    masses_[0] *= 1 - chance;
    // So small a chance of so many changes no target.
    while (masses_.size() > 1 && masses_.back() < 1e-12) masses_.pop_back();
  }
  void add_to(std::vector<double>& sum, double weight) const {
    if (sum.size() < masses_.size()) sum.resize(masses_.size(), 0.0);
    for (std::size_t n = 0; n < masses_.size(); ++n) sum[n] += weight * masses_[n];
  }

 private:
  std::vector<double> masses_{1.0};
};

/// The chance that a unit is replaced before an arrival, by a parabola over the days that the lead
/// time and the wait for the next order day may take: these are few beside a life, so that the
/// curve hardly bends between them.
class ArrivalChances {
 public:
  /// From the shortest lead time until the longest after `waited` days.
  ArrivalChances(const wear::LifeOfUnit& unit, int waited, const LeadTime& lead)
      : first_{lead.distribution().front().days},
        half_{std::max(1.0, (waited + lead.distribution().back().days - first_) / 2.0)} {
    for (std::size_t i = 0; i < chances_.size(); ++i) {
      const int after = first_ + static_cast<int>(std::ceil(half_ * static_cast<double>(i)));
      days_[i] = after;
      chances_[i] = at_most_replaced(unit.life, unit.life.today() + days{after}, unit.others);
    }
  }

  /// So many days after the unit's today.
  [[nodiscard]] double at(int after) const {
    double sum = 0;
    for (std::size_t i = 0; i < chances_.size(); ++i) {
      double weight = chances_[i];
      for (std::size_t j = 0; j < chances_.size(); ++j) {
        if (j != i) weight *= (after - days_[j]) / (days_[i] - days_[j]);
      }
      sum += weight;
    }
    return std::clamp(sum, 0.0, 1.0);
  }

 private:
  int first_;
  double half_;
  std::array<double, 3> days_{};
  std::array<double, 3> chances_{};
};

}  // namespace

Futures::Futures(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                 const Board& board)
    : board_{board},
      today_{board.period.start},
      horizon_{static_cast<double>(days_between(board.period.start, board.period.end))},
      lines_of_item_(board.items.size()) {
  const ClinicIndex index{clinic};
  std::map<std::pair<PatientRef, Kind>, std::size_t> numbers;
  for (const wear::LifeOfUnit& of : lives) {
    const Unit& unit = clinic.units[of.unit];
    const auto item = board.positions.find(unit.item);
    if (item == board.positions.end()) continue;
    const Kind kind = board.items[item->second].item->kind;
    const auto person = numbers.emplace(std::pair{unit.patient, kind}, persons_.size());
    if (person.second) {
      persons_.push_back(
          {&of.life, {}, number_of(fmt::format("{}|{}", unit.patient.text, word(kind)))});
    }
    persons_[person.first->second].lines.push_back(lines_.size());
    lines_of_item_[item->second].push_back(lines_.size());
    lines_.push_back({&of.life, without_changes(of.others), item->second, person.first->second,
                      number_of_unit(unit)});
  }
}

double Futures::age_at(const Line& line, const Spell& spell, double at) {
  return spell.age + wear_after(*line.life, at) - wear_after(*line.life, spell.from);
}

double Futures::hazard_of(const Line& line, const Spell& spell, double at) {
  return hazard_at(*line.life, age_at(line, spell, at)) - hazard_at(*line.life, spell.age);
}

std::vector<Futures::Spell> Futures::spells_of(const Line& line, double multiplier,
                                               std::uint64_t number) const {
  constexpr std::uint64_t draws_each = 3;
  const double loss_rate = rate_of(line.others, true);
  const double ends_after =
      waiting_time(rate_of(line.others, false), uniform_at(number, line.subject, 0));
  std::vector<Spell> made;
  Spell spell{0, 0, line.life->wear_age_days(), false, 0, 0};
  for (std::uint64_t draw = 1;; draw += draws_each) {
    const double further = -std::log(uniform_at(number, line.subject, draw)) / multiplier;
    const double last_age =
        line.life->scale_days() *
        std::pow(hazard_at(*line.life, spell.age) + further, 1 / line.life->shape());
    const double worn_after =
        line.life->days_for_wear(wear_after(*line.life, spell.from) + last_age - spell.age);
    const double lost_after =
        spell.from + waiting_time(loss_rate, uniform_at(number, line.subject, draw + 1));
    spell.until = std::min({worn_after, lost_after, ends_after});
    spell.worn = worn_after <= std::min(lost_after, ends_after);
    made.push_back(spell);
    const double hazard_before =
        spell.hazard_before + hazard_of(line, spell, std::min(spell.until, horizon_));
    const int worn_before = spell.worn_before + (spell.worn ? 1 : 0);
    if (ends_after <= spell.until || spell.until > horizon_) return made;
    spell = {spell.until, 0, 0, false, hazard_before, worn_before};
  }
}

Requests Futures::requests_of(const Spells& spells) const {
  std::vector<std::map<std::pair<Date, std::size_t>, int>> pieces(board_.items.size());
  for (std::size_t l = 0; l < lines_.size(); ++l) {
    // Every spell but the last was followed by another unit.
    for (std::size_t s = 0; s + 1 < spells[l].size(); ++s) {
      const Date day = today_ + days{whole_day(spells[l][s].until)};
      ++pieces[lines_[l].item][{day, lines_[l].person}];
    }
  }
  Requests made(board_.items.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    for (const auto& [at, count] : pieces[i]) made[i].push_back({at.first, count});
  }
  return made;
}

/// The state of one future on one order day, as far as it has shown itself.
class Futures::Targeting {
 public:
  Targeting(const Futures& of, const Spells& spells)
      : of_{of}, spells_{spells}, remembered_(of.persons_.size()) {}

  /// The next order day is `waited` days after `day`.
  [[nodiscard]] CycleDemand needed(const std::vector<std::size_t>& lines, const BoardItem& item,
                                   Date day, int waited) {
    std::vector<ArrivalChances> units;
    for (const std::size_t line : lines) {
      if (const auto life = life_at(line, day)) units.emplace_back(*life, waited, item.lead);
    }
    return {within(units, 0, item.lead), within(units, waited, item.lead)};
  }

 private:
  /// What the person's history says by then: their posterior of today with what was seen since.
  [[nodiscard]] wear::Multiplier multiplier_at(const Person& person, double at) const {
    const wear::Multiplier& known = person.life->person();
    if (!std::isfinite(known.shape())) return known;
    double endings = 0;
    double hazard = 0;
    for (const std::size_t l : person.lines) {
      const auto after = std::ranges::upper_bound(spells_[l], at, {}, &Spell::from);
      if (after == spells_[l].begin()) continue;
      const Spell& last = *(after - 1);
      hazard += last.hazard_before + hazard_of(of_.lines_[l], last, std::min(last.until, at));
      endings += last.worn_before + (last.worn && last.until <= at ? 1 : 0);
    }
    return {known.shape() + endings, known.rate() + hazard};
  }

  /// The lines of a person ask for it one after the other on the same day.
  [[nodiscard]] const wear::Multiplier& multiplier_of(std::size_t person, double at) {
    Remembered& last = remembered_[person];
    if (last.at != at) last = {at, multiplier_at(of_.persons_[person], at)};
    return last.multiplier;
  }

  /// Empty when nothing of the line is in use.
  [[nodiscard]] std::optional<wear::LifeOfUnit> life_at(std::size_t l, Date day) {
    const Line& line = of_.lines_[l];
    const double at = days_between(of_.today_, day);
    const auto spell = std::ranges::find_if(
        spells_[l], [&](const Spell& each) { return each.from <= at && at < each.until; });
    if (spell == spells_[l].end()) return std::nullopt;
    const double rate = line.life->wear_until(day + days{1}) - line.life->wear_until(day);
    return wear::LifeOfUnit{l,
                            wear::UnitLife{day,
                                           age_at(line, *spell, at),
                                           line.life->shape(),
                                           line.life->scale_days(),
                                           {{day, rate}},
                                           multiplier_of(line.person, at)},
                            line.others};
  }

  [[nodiscard]] static Pmf within(const std::vector<ArrivalChances>& units, int waited,
                                  const LeadTime& lead) {
    std::vector<double> masses;
    for (const LeadTime::Day& day : lead.distribution()) {
      ChanceSum sum;
      for (const ArrivalChances& unit : units) sum.add(unit.at(waited + day.days));
      sum.add_to(masses, day.chance);
    }
    return Pmf{std::move(masses)};
  }

  struct Remembered {
    double at = -1;
    wear::Multiplier multiplier;
  };

  const Futures& of_;
  const Spells& spells_;
  std::vector<Remembered> remembered_;  ///< by person
};

Scenario Futures::draw(std::uint64_t number, const std::vector<double>& services) const {
  Spells spells(lines_.size());
  for (const Person& person : persons_) {
    const double multiplier =
        drawn_multiplier(person.life->person(), uniform_at(number, person.subject, 0));
    for (const std::size_t l : person.lines) spells[l] = spells_of(lines_[l], multiplier, number);
  }
  Scenario made{requests_of(spells), empty_targets(board_, services.size()), number};
  Targeting targeting{*this, spells};
  for (std::size_t i = 0; i < board_.items.size(); ++i) {
    if (lines_of_item_[i].empty()) continue;
    const BoardItem& item = board_.items[i];
    const OrderDays order_days = item.supplier == nullptr ? OrderDays{} : item.supplier->order_days;
    for (std::size_t d = 0; d < item.order_days.size(); ++d) {
      const Date day = item.order_days[d];
      const int waited = days_between(day, next_order_day(order_days, day));
      const auto demand = targeting.needed(lines_of_item_[i], item, day, waited);
      const auto levels = board_.levels(i, services, demand, waited);
      for (std::size_t c = 0; c < levels.size(); ++c) made.targets[i][c][d] = levels[c];
    }
  }
  return made;
}

}  // namespace sparewell::supply::play
