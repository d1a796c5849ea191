#include "people.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "calendar.hpp"
#include "habits.hpp"
#include "names.hpp"
#include "truth.hpp"

namespace sparewell::sample {
namespace {

Level level_of(int number, Random& random) {
  // The first few cover every level, whatever the seed.
  if (number <= 7) return static_cast<Level>(number - 1);
  return static_cast<Level>(random.weighted({0.66, 0.18, 0.05, 0.03, 0.05, 0.02, 0.01}));
}

Suspension suspension_of(Level level, Random& random) {
  using S = Suspension;
  switch (level) {
    case Level::transtibial: {
      static constexpr std::array<S, 5> list{S::pin, S::lanyard, S::sleeve, S::suction, S::vacuum};
      return list[random.weighted({0.42, 0.05, 0.27, 0.16, 0.10})];
    }
    case Level::transfemoral: {
      static constexpr std::array<S, 4> list{S::pin, S::lanyard, S::suction, S::belt};
      return list[random.weighted({0.3, 0.2, 0.4, 0.1})];
    }
    case Level::ankle_disarticulation:
      return S::anatomical;
    case Level::knee_disarticulation:
      return random.chance(0.5) ? S::suction : S::anatomical;
    case Level::transradial:
      return random.chance(0.6) ? S::pin : S::anatomical;
    case Level::transhumeral:
    case Level::other:
      return S::belt;
  }
  return S::belt;
}

double first_circumference(Level level, Random& random) {
  const auto around = [&](double mean, double spread, double least, double most) {
    return std::clamp(mean + spread * random.normal(), least, most);
  };
  switch (level) {
    case Level::transfemoral:
    case Level::knee_disarticulation:
    case Level::other:
      return around(39, 3.5, 32, 47);
    case Level::transradial:
    case Level::transhumeral:
      return around(20, 1.6, 16, 24.5);
    default:
      return around(26.5, 2.6, 20, 35);
  }
}

Limb make_limb(Side side, Level level, bool fresh, Date joined, Random& random) {
  Limb limb;
  limb.side = side;
  limb.level = level;
  limb.later = suspension_of(level, random);
  limb.first = fresh && random.chance(0.3) ? suspension_of(level, random) : limb.later;
  if (fresh) limb.definitive_on = working_day_from(joined + days{random.whole(150, 330)});
  limb.circumference_cm = first_circumference(level, random);
  limb.shrinking = fresh ? random.uniform(0.015, 0.035) : 0;
  limb.drift_a_year = 0.008 * random.normal();
  static constexpr std::array<Material, 3> materials{Material::silicone, Material::mineral_oil_gel,
                                                     Material::urethane};
  limb.liner_material = materials[random.weighted({0.45, 0.35, 0.2})];
  limb.alternates_liners = random.chance(0.35);
  limb.records_shares = random.chance(0.7);
  limb.keeps_spare_sleeve = random.chance(0.12);
  return limb;
}

void add_limbs(Person& person, int number, bool fresh, Random& random) {
  const Level level = level_of(number, random);
  const Side side = random.chance(0.5) ? Side::left : Side::right;
  person.limbs.push_back(make_limb(side, level, fresh, person.joined, random));
  const bool bilateral = number % 23 == 1 || random.chance(0.04);
  if (!bilateral) return;
  const Side other = side == Side::left ? Side::right : Side::left;
  person.limbs.push_back(make_limb(other, level, fresh, person.joined, random));
}

void add_parting(Person& person, const Wishes& wishes, Random& random) {
  const int span = days_between(person.joined, wishes.until);
  const double yearly = random.chance(0.5) ? 0.03 : 0.05;
  const int after = 90 + static_cast<int>(random.exponential() * 365 / yearly);
  person.leave_reason = random.chance(0.45) ? EndReason::deceased : EndReason::returned;
  if (after < span) person.leaves = person.joined + days{after};
}

Patient make_record(const Wishes& wishes, int number, Random& random) {
  Patient record;
  record.ref.text = fmt::format("P-{:04}", number);
  record.given_name = invented_given_name(random);
  record.family_name = invented_family_name(random);
  const int age_days = static_cast<int>(random.uniform(19, 88) * 365.25);
  if (!random.chance(0.04)) record.birth_date = wishes.until - days{age_days};
  if (random.chance(0.55)) {
    record.next_visit = working_day_from(wishes.until + days{random.whole(1, 120)});
  } else if (random.chance(0.05)) {
    record.next_visit = working_day_from(wishes.until - days{random.whole(3, 30)});  // missed
  }
  return record;
}

}  // namespace

double Limb::true_circumference(double weeks) const {
  const double since = std::max(0.0, weeks);
  return circumference_cm * (1 - shrinking * std::log1p(since / 2)) *
         (1 + drift_a_year * since / 52);
}

Person make_person(const Wishes& wishes, int number) {
  Random random{wishes.seed, static_cast<std::uint64_t>(number)};
  Person person;
  person.record = make_record(wishes, number, random);
  // Three in five were known already and come for the first time in the first eight months.
  const int span = days_between(wishes.from(), wishes.until);
  const bool known = random.chance(0.6);
  const int after = random.whole(5, known ? std::min(span - 1, 240) : span - 1);
  person.joined = working_day_from(wishes.from() + days{after});
  if (person.joined > wishes.until) person.joined -= days{3};
  add_limbs(person, number, !known && random.chance(0.7), random);
  add_parting(person, wishes, random);
  if (person.leaves) person.record.next_visit.reset();
  person.usage = make_usage(person.record.ref, person.joined, wishes.until, random);
  for (std::size_t kind = 0; kind < person.hazard_multiplier.size(); ++kind) {
    const double theta = law_of(static_cast<Kind>(kind), Material::other).theta;
    person.hazard_multiplier[kind] = theta * random.gamma(1 / theta);
  }
  person.reacts_to_gel = random.chance(0.06);
  person.brings_old_hardware = known && random.chance(0.25);
  return person;
}

}  // namespace sparewell::sample
