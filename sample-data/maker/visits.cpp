// What happens on a visit: fitting, measuring, a new prosthesis, a reaction, the last day.
#include <algorithm>
#include <array>
#include <cmath>

#include "calendar.hpp"
#include "truth.hpp"
#include "world.hpp"

namespace sparewell::sample {
namespace {

bool stays_in_socket(Kind kind) {
  return kind == Kind::lock || kind == Kind::pin || kind == Kind::valve || kind == Kind::pump;
}

std::optional<ModelId> without_gel(ModelId model) {
  switch (model) {
    case ModelId::locking_gel:
      return ModelId::locking_silicone;
    case ModelId::cushion_gel:
      return ModelId::cushion_urethane;
    case ModelId::sleeve_gel:
      return ModelId::sleeve_neoprene;
    default:
      return std::nullopt;
  }
}

double tenths(double value) {
  return std::round(value * 10) / 10;
}

Sensitivity sensitivity(const Patient& patient, const char* substance, const char* reaction,
                        const char* established_by, Date noted_on) {
  return {patient.ref, substance, reaction, established_by, noted_on};
}

/// About one patient in twelve comes with a sensitivity.
std::optional<Sensitivity> known_sensitivity(const Patient& patient, Date joined, Random& random) {
  if (!random.chance(0.08)) return std::nullopt;
  static constexpr std::array<const char*, 7> substances{
      "nickel",  "dialkyl thioureas",     "thiurams", "fragrance",
      "lanolin", "mercaptobenzothiazole", "polyamide"};
  static constexpr std::array<const char*, 4> reactions{"contact dermatitis", "itching", "redness",
                                                        "blisters"};
  static constexpr std::array<const char*, 3> ways{"patch test", "observed", "reported"};
  Sensitivity made = sensitivity(patient, random.pick(substances), random.pick(reactions),
                                 random.pick(ways), joined - days{random.whole(0, 900)});
  if (random.chance(0.2)) made.noted_on.reset();
  return made;
}

}  // namespace

void World::start(std::size_t index, Date today) {
  Visitor& visitor = visitors_[index];
  visitor.present = true;
  take_usage(visitor, today);
  if (auto known = known_sensitivity(visitor.person.record, today, visitor.random)) {
    clinic_.sensitivities.push_back(std::move(*known));
  }
  for (std::size_t limb = 0; limb < visitor.limbs.size(); ++limb) start_limb(index, limb, today);
}

void World::start_limb(std::size_t index, std::size_t limb, Date today) {
  Visitor& visitor = visitors_[index];
  const Limb& plan = visitor.person.limbs[limb];
  FittedLimb& fitted = visitor.limbs[limb];
  add_prosthesis(visitor, limb, plan.first,
                 plan.definitive_on ? Stage::preparatory : Stage::definitive, today);
  measure(index, limb, today);
  if (visitor.person.brings_old_hardware) bring_old_hardware(visitor, limb, today);
  for (std::size_t slot = 0; slot < fitted.slots.size(); ++slot) refill(index, limb, slot, today);
  if (visitor.person.reacts_to_gel) {
    fitted.reaction_on = working_day_from(today + days{visitor.random.whole(25, 120)});
  }
}

void World::bring_old_hardware(Visitor& visitor, std::size_t limb, Date today) {
  FittedLimb& fitted = visitor.limbs[limb];
  for (Slot& slot : fitted.slots) {
    const Item& item = catalogue_.items[slot.item];
    if (item.kind != Kind::lock && item.kind != Kind::pump) continue;
    const Date issued = working_day_from(today - days{visitor.random.whole(100, 800)});
    const std::size_t unit = add_unit(visitor, limb, item, Lot{}, issued);
    clinic_.units[unit].serial.clear();
    wear_from_now(visitor, slot, unit, today);
    Worn& worn = slot.worn.back();
    worn.age = days_between(issued, today) * visitor.rate[static_cast<std::size_t>(item.kind)];
    // It is known because it has lasted: its life is drawn given that.
    const Law law = law_of(item.kind, item.material);
    const double z = visitor.person.hazard_multiplier[static_cast<std::size_t>(item.kind)];
    while (worn.limit <= worn.age)
      worn.limit = visitor.random.weibull(law.shape, law.scale_days, z);
    auto& first = visitor.person.usage.front().from_date;
    first = std::min(first, issued);
  }
}

void World::add_prosthesis(Visitor& visitor, std::size_t limb, Suspension suspension, Stage stage,
                           Date today) {
  const Limb& plan = visitor.person.limbs[limb];
  FittedLimb& fitted = visitor.limbs[limb];
  if (fitted.prosthesis) clinic_.prostheses[*fitted.prosthesis].ended_on = today;
  fitted.prosthesis = clinic_.prostheses.size();
  clinic_.prostheses.push_back(
      {visitor.person.record.ref, plan.side, plan.level, suspension, stage, today, std::nullopt});
}

void World::note_circumference(Visitor& visitor, std::size_t limb, double at_cm, double size,
                               Date today) {
  clinic_.measurements.push_back(
      {visitor.person.record.ref, visitor.person.limbs[limb].side, today, at_cm, tenths(size)});
}

void World::measure(std::size_t index, std::size_t limb, Date today) {
  Visitor& visitor = visitors_[index];
  const Limb& plan = visitor.person.limbs[limb];
  FittedLimb& fitted = visitor.limbs[limb];
  const int since = days_between(visitor.person.joined, today);
  const double size = plan.true_circumference(since / 7.0) + 0.15 * visitor.random.normal();
  const double upper = upper_circumference(size) + 0.2 * visitor.random.normal();
  note_circumference(visitor, limb, 4, size, today);
  if (visitor.random.chance(0.6)) note_circumference(visitor, limb, 20, upper, today);
  const bool changing = plan.shrinking > 0 && since < 300;
  const int next = changing ? visitor.random.whole(28, 56) : visitor.random.whole(150, 330);
  fitted.measure_on = working_day_from(today + days{next});
  for (std::size_t i = 0; i < fitted.slots.size(); ++i) {
    Slot& slot = fitted.slots[i];
    const Item& item = catalogue_.items[slot.item];
    if (!item.size_min_cm || item.kind == Kind::sock) continue;
    const double measured = item.size_at_cm.value_or(4) > 10 ? upper : size;
    if (measured > *item.size_min_cm - 0.15 && measured < *item.size_max_cm + 0.15) continue;
    const std::size_t better = catalogue_.fitting(slot.model, measured);
    if (better == slot.item) continue;
    end_all(slot, today, EndReason::resized);
    change_item(slot, better);
    refill(index, limb, i, today);
  }
}

void World::react(std::size_t index, std::size_t limb, Date today) {
  Visitor& visitor = visitors_[index];
  FittedLimb& fitted = visitor.limbs[limb];
  bool reacted = false;
  for (std::size_t i = 0; i < fitted.slots.size(); ++i) {
    Slot& slot = fitted.slots[i];
    const auto instead = without_gel(slot.model);
    if (!instead || slot.worn.empty()) continue;
    const Item& first = catalogue_.first_of(*instead);
    const int since = days_between(visitor.person.joined, today);
    const double size = visitor.person.limbs[limb].true_circumference(since / 7.0);
    end_all(slot, today, EndReason::reaction);
    slot.model = *instead;
    change_item(slot, catalogue_.fitting(
                          *instead, first.kind == Kind::sleeve ? upper_circumference(size) : size));
    refill(index, limb, i, today);
    reacted = true;
  }
  if (!reacted || limb != 0) return;
  clinic_.sensitivities.push_back(
      sensitivity(visitor.person.record, "mineral oil", "contact dermatitis",
                  visitor.random.chance(0.5) ? "observed" : "patch test", today));
}

void World::deliver_definitive(std::size_t index, std::size_t limb, Date today) {
  Visitor& visitor = visitors_[index];
  const Limb& plan = visitor.person.limbs[limb];
  FittedLimb& fitted = visitor.limbs[limb];
  add_prosthesis(visitor, limb, plan.later, Stage::definitive, today);
  std::vector<Slot> before = std::move(fitted.slots);
  fitted.slots.clear();
  ++fitted.chain;
  const double size = plan.true_circumference(days_between(visitor.person.joined, today) / 7.0);
  Limb now = plan;
  now.circumference_cm = size;
  for (const ModelId model :
       chain_of(plan.level, plan.later, plan.liner_material, visitor.random)) {
    Slot slot = make_slot(model, now);
    const Kind kind = catalogue_.items[slot.item].kind;
    const auto same = std::ranges::find_if(before, [&](const Slot& old) {
      const bool sock = kind == Kind::sock && catalogue_.items[old.item].kind == Kind::sock;
      return !stays_in_socket(kind) && (old.model == model || sock);
    });
    if (same != before.end()) {
      shop_.change_waiting(same->item, -same->waiting);
      same->waiting = 0;
      slot = std::move(*same);
      before.erase(same);
    }
    fitted.slots.push_back(std::move(slot));
  }
  for (Slot& old : before) {
    end_all(old, today, EndReason::upgrade);
    shop_.change_waiting(old.item, -old.waiting);
  }
  for (std::size_t i = 0; i < fitted.slots.size(); ++i) refill(index, limb, i, today);
}

void World::leave(std::size_t index, Date today) {
  Visitor& visitor = visitors_[index];
  const EndReason reason = visitor.person.leave_reason;
  for (FittedLimb& fitted : visitor.limbs) {
    for (Slot& slot : fitted.slots) {
      end_all(slot, today, reason);
      shop_.change_waiting(slot.item, -slot.waiting);
      slot.waiting = 0;
    }
    for (const std::size_t unit : fitted.drawer) {
      clinic_.units[unit].ended_on = today;
      clinic_.units[unit].end_reason = reason;
    }
    clinic_.prostheses[*fitted.prosthesis].ended_on = today;
    ++fitted.chain;
  }
  visitor.present = false;
}

}  // namespace sparewell::sample
