#include "world.hpp"

#include <algorithm>

#include "calendar.hpp"
#include "truth.hpp"

namespace sparewell::sample {
namespace {

constexpr std::uint64_t life_stream = 1ULL << 32U;

double sized_by(const Item& item, double at_four_cm) {
  return item.size_at_cm.value_or(4) > 10 ? upper_circumference(at_four_cm) : at_four_cm;
}

int pieces_together(Kind kind, const Limb& limb, int socks) {
  if (kind == Kind::sock) return socks;
  return kind == Kind::liner && limb.alternates_liners ? 2 : 1;
}

}  // namespace

World::World(const Wishes& wishes)
    : wishes_{wishes},
      catalogue_{make_catalogue()},
      shop_{catalogue_, wishes.seed, wishes.from(), wishes.until} {
  std::vector<int> wanted(catalogue_.items.size());
  for (int number = 1; number <= wishes.patients; ++number) {
    const auto stream = life_stream + static_cast<std::uint64_t>(number);
    Visitor visitor{make_person(wishes, number), Random{wishes.seed, stream}, {}, {}, 0, {}, false};
    for (const Limb& limb : visitor.person.limbs) {
      FittedLimb fitted;
      for (const ModelId model :
           chain_of(limb.level, limb.first, limb.liner_material, visitor.random)) {
        fitted.slots.push_back(make_slot(model, limb));
        const Slot& slot = fitted.slots.back();
        const bool soon = visitor.person.joined < wishes.from() + days{60};
        if (soon && catalogue_.items[slot.item].stocked) wanted[slot.item] += slot.wanted;
      }
      visitor.limbs.push_back(std::move(fitted));
    }
    visitors_.push_back(std::move(visitor));
  }
  for (std::size_t item = 0; item < wanted.size(); ++item) {
    if (wanted[item] > 0) shop_.open_with(item, wanted[item]);
  }
}

Slot World::make_slot(ModelId model, const Limb& limb) const {
  Slot slot;
  slot.model = model;
  const Item& item = catalogue_.first_of(model);
  slot.item = catalogue_.fitting(model, sized_by(item, limb.circumference_cm));
  slot.wanted = pieces_together(item.kind, limb, wishes_.socks);
  return slot;
}

Clinic World::run() {
  for (Date today = wishes_.from() - days{40}; today <= wishes_.until; today += days{1}) {
    shop_.receive(today);
    if (today >= wishes_.from()) pass_day(today);
  }
  clinic_.suppliers = catalogue_.suppliers;
  clinic_.items = catalogue_.items;
  clinic_.shelf = shop_.shelf();
  clinic_.order_lines = shop_.orders();
  for (auto& visitor : visitors_) {
    clinic_.patients.push_back(visitor.person.record);
    for (auto& row : visitor.person.usage) {
      if (!visitor.person.leaves || row.from_date < *visitor.person.leaves) {
        clinic_.usage.push_back(row);
      }
    }
  }
  return std::move(clinic_);
}

void World::pass_day(Date today) {
  for (std::size_t i = 0; i < visitors_.size(); ++i) pass_day(i, today);
  if (today == wishes_.until - days{400}) recall(today);
  if (!is_working_day(today)) return;
  serve(today);
  shop_.place_orders(today);
}

void World::pass_day(std::size_t index, Date today) {
  Visitor& visitor = visitors_[index];
  if (today == visitor.person.joined) return start(index, today);
  if (!visitor.present) return;
  if (visitor.person.leaves && today >= *visitor.person.leaves) return leave(index, today);
  for (std::size_t limb = 0; limb < visitor.limbs.size(); ++limb) {
    FittedLimb& fitted = visitor.limbs[limb];
    for (std::size_t slot = 0; slot < fitted.slots.size(); ++slot) wear(index, limb, slot, today);
    if (visitor.person.limbs[limb].definitive_on == today) deliver_definitive(index, limb, today);
    if (fitted.measure_on == today) measure(index, limb, today);
    if (fitted.reaction_on == today) react(index, limb, today);
  }
  take_usage(visitor, today);
}

void World::take_usage(Visitor& visitor, Date today) {
  const auto& rows = visitor.person.usage;
  bool changed = false;
  while (visitor.usage_taken < rows.size() && rows[visitor.usage_taken].from_date <= today) {
    const Usage& row = rows[visitor.usage_taken++];
    Usage& now = visitor.in_force;
    if (row.activity) now.activity = row.activity;
    if (row.kneeling_hours) now.kneeling_hours = row.kneeling_hours;
    if (row.wear_hours) now.wear_hours = row.wear_hours;
    if (row.sweating) now.sweating = row.sweating;
    if (row.impact_sport) now.impact_sport = row.impact_sport;
    changed = true;
  }
  if (!changed) return;
  for (std::size_t kind = 0; kind < visitor.rate.size(); ++kind) {
    visitor.rate[kind] = wear_rate(static_cast<Kind>(kind), visitor.in_force);
  }
}

void World::wear(std::size_t index, std::size_t limb, std::size_t slot_index, Date today) {
  Visitor& visitor = visitors_[index];
  Slot& slot = visitor.limbs[limb].slots[slot_index];
  const Kind kind = catalogue_.items[slot.item].kind;
  const double rate = visitor.rate[static_cast<std::size_t>(kind)];
  // A recorded share holds whatever else is in use; without one, those in use together alternate.
  const double alternated = slot.worn.empty() ? 1 : 1.0 / static_cast<double>(slot.worn.size());
  for (auto& worn : slot.worn) {
    worn.age += rate * clinic_.units[worn.unit].share.value_or(alternated);
  }
  for (std::size_t i = slot.worn.size(); i-- > 0;) {
    if (slot.worn[i].age >= slot.worn[i].limit) {
      end(slot, i, today, wear_reason(kind, visitor.random));
    } else if (slot.worn[i].mishap <= today) {
      end(slot, i, today, visitor.random.chance(0.75) ? EndReason::lost : EndReason::other);
    }
  }
  refill(index, limb, slot_index, working_day_from(today));
}

void World::refill(std::size_t index, std::size_t limb, std::size_t slot_index, Date ready_on) {
  Visitor& visitor = visitors_[index];
  Slot& slot = visitor.limbs[limb].slots[slot_index];
  const int there = static_cast<int>(slot.worn.size()) + slot.waiting;
  // Socks are fetched by the pack, when few are left.
  const bool socks = catalogue_.items[slot.item].kind == Kind::sock;
  if (there >= slot.wanted || (socks && there > slot.wanted / 3)) return;
  const int late = visitor.random.chance(0.6) ? 0 : visitor.random.whole(1, 5);
  for (int i = there; i < slot.wanted; ++i) {
    requests_.push_back(
        {index, limb, slot_index, visitor.limbs[limb].chain, ready_on + days{late}});
    ++slot.waiting;
    shop_.change_waiting(slot.item, 1);
  }
}

}  // namespace sparewell::sample
