#include "supply/pairs.hpp"

#include <algorithm>
#include <cstdlib>
#include <tuple>

namespace sparewell::supply {
namespace {

constexpr double believed = 0.05;
constexpr double weight = 1;

struct Seen {
  int pairs = 0;
  int together = 0;
};

/// Units of one item handed to a patient's side on one day.
using HandedOut = std::tuple<PatientRef, Side, ItemCode, Date>;

std::map<HandedOut, std::vector<const Unit*>> handed_out(const Clinic& clinic, Date today) {
  std::map<HandedOut, std::vector<const Unit*>> made;
  const ClinicIndex index{clinic};
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (item == nullptr || !comes_in_pairs(item->kind) || unit.issued_on > today) continue;
    made[{unit.patient, unit.side, unit.item, unit.issued_on}].push_back(&unit);
  }
  return made;
}

bool ended_by(const Unit& unit, Date day) {
  return unit.ended_on && *unit.ended_on <= day;
}

/// Nothing when no part of the pair was worn out long enough ago, or the first to end was not.
void count(const Unit& one, const Unit& other, Date today, Seen& seen) {
  const Date known = today - days{together_days};
  const bool one_first = !other.ended_on || (one.ended_on && *one.ended_on <= *other.ended_on);
  const Unit& first = one_first ? one : other;
  const Unit& second = one_first ? other : one;
  const auto worn = [](const Unit& unit) { return unit.end_reason && is_wear(*unit.end_reason); };
  if (!ended_by(first, known)) return;
  const bool same_day = second.ended_on == first.ended_on;
  if (!worn(first) && !(same_day && worn(second))) return;
  ++seen.pairs;
  if (ended_by(second, *first.ended_on + days{together_days})) ++seen.together;
}

}  // namespace

bool comes_in_pairs(Kind kind) {
  return kind == Kind::liner || kind == Kind::sleeve;
}

Pairs pairs_among(const Clinic& clinic, const std::vector<const wear::LifeOfUnit*>& users) {
  const auto unit = [&](std::size_t i) -> const Unit& { return clinic.units[users[i]->unit]; };
  const auto same_wearer = [&](std::size_t i, std::size_t j) {
    return unit(i).patient == unit(j).patient && unit(i).side == unit(j).side;
  };
  Pairs made;
  for (std::size_t from = 0; from < users.size();) {
    std::size_t to = from + 1;
    while (to < users.size() && same_wearer(from, to)) ++to;
    const bool equal = to - from == 2 && unit(from).issued_on == unit(from + 1).issued_on &&
                       unit(from).share == unit(from + 1).share;
    if (equal) made.push_back({from, from + 1});
    from = to;
  }
  return made;
}

std::map<Kind, double> chances_together(const Clinic& clinic, Date today) {
  const ClinicIndex index{clinic};
  std::map<Kind, Seen> seen;
  for (const auto& [key, units] : handed_out(clinic, today)) {
    if (units.size() != 2) continue;
    count(*units[0], *units[1], today, seen[index.item(units[0]->item)->kind]);
  }
  std::map<Kind, double> made;
  for (const auto& [kind, of_kind] : seen) {
    made[kind] = (of_kind.together + weight * believed) / (of_kind.pairs + weight);
  }
  return made;
}

wear::LifeOfUnit first_of_two(const wear::LifeOfUnit& one) {
  wear::LifeOfUnit made = one;
  made.life = one.life.first_of(2);
  return made;
}

}  // namespace sparewell::supply
