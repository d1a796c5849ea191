// Parts from the shelf to the patient, and their ends.
#include <algorithm>
#include <map>
#include <utility>

#include <fmt/format.h>

#include "calendar.hpp"
#include "truth.hpp"
#include "world.hpp"

namespace sparewell::sample {
namespace {

bool has_serial(Kind kind) {
  return kind == Kind::liner || kind == Kind::lock || kind == Kind::pump;
}

}  // namespace

void World::change_item(Slot& slot, std::size_t item) {
  shop_.change_waiting(slot.item, -slot.waiting);
  slot.item = item;
  shop_.change_waiting(slot.item, slot.waiting);
}

void World::end(Slot& slot, std::size_t position, Date today, EndReason reason) {
  Unit& unit = clinic_.units[slot.worn[position].unit];
  unit.ended_on = today;
  unit.end_reason = reason;
  slot.worn.erase(slot.worn.begin() + static_cast<std::ptrdiff_t>(position));
  shop_.change_worn(slot.item, -1.0 / slot.wanted);
}

void World::end_all(Slot& slot, Date today, EndReason reason) {
  while (!slot.worn.empty()) end(slot, slot.worn.size() - 1, today, reason);
}

void World::serve(Date today) {
  std::vector<Request> left;
  for (const Request& request : requests_) {
    if (request.ready_on > today || !hand_out(request, today)) left.push_back(request);
  }
  requests_ = std::move(left);
}

/// False when the patient has to wait.
bool World::hand_out(const Request& request, Date today) {
  Visitor& visitor = visitors_[request.visitor];
  FittedLimb& fitted = visitor.limbs[request.limb];
  if (fitted.chain != request.chain) return true;
  Slot& slot = fitted.slots[request.slot];
  const auto lot = shop_.take(slot.item, today);
  if (!lot) return false;
  --slot.waiting;
  shop_.change_waiting(slot.item, -1);
  const Item& item = catalogue_.items[slot.item];
  const std::size_t unit = add_unit(visitor, request.limb, item, *lot, today);
  wear_from_now(visitor, slot, unit, today);
  const bool spare = visitor.person.limbs[request.limb].keeps_spare_sleeve;
  if (item.kind != Kind::sleeve || !spare || !fitted.drawer.empty()) return true;
  if (const auto second = shop_.take(slot.item, today)) {
    fitted.drawer.push_back(add_unit(visitor, request.limb, item, *second, today));
    clinic_.units[fitted.drawer.back()].share = 0;
  }
  return true;
}

std::size_t World::add_unit(Visitor& visitor, std::size_t limb, const Item& item, const Lot& lot,
                            Date today) {
  Unit unit;
  unit.patient = visitor.person.record.ref;
  unit.side = visitor.person.limbs[limb].side;
  unit.item = item.code;
  unit.lot = lot.lot;
  if (has_serial(item.kind)) unit.serial = fmt::format("{:07}", 1000000 + 7 * ++serials_made_);
  unit.issued_on = today;
  clinic_.units.push_back(std::move(unit));
  return clinic_.units.size() - 1;
}

void World::wear_from_now(Visitor& visitor, Slot& slot, std::size_t unit, Date today) {
  const Item& item = catalogue_.items[slot.item];
  const Law law = law_of(item.kind, item.material);
  const double z = visitor.person.hazard_multiplier[static_cast<std::size_t>(item.kind)];
  Worn worn;
  worn.unit = unit;
  worn.limit = visitor.random.weibull(law.shape, law.scale_days, z);
  // About 2 % a year are lost or end in some other way.
  worn.mishap = today + days{1 + static_cast<int>(visitor.random.exponential() * 18000)};
  slot.worn.push_back(worn);
  shop_.change_worn(slot.item, 1.0 / slot.wanted);
  const auto side = clinic_.units[unit].side;
  const auto& limbs = visitor.person.limbs;
  const auto limb = std::ranges::find(limbs, side, &Limb::side);
  if (limb->records_shares && item.kind != Kind::sock) {
    clinic_.units[unit].share = slot.wanted == 2 ? 0.5 : 1.0;
  }
}

/// A maker calls back the lot of liners or valves of which most pieces are in use.
void World::recall(Date today) {
  std::map<std::pair<std::size_t, std::string>, int> counts;
  for (const Visitor& visitor : visitors_) {
    for (const FittedLimb& fitted : visitor.limbs) {
      for (const Slot& slot : fitted.slots) {
        const Kind kind = catalogue_.items[slot.item].kind;
        if (kind != Kind::liner && kind != Kind::valve) continue;
        for (const Worn& worn : slot.worn) ++counts[{slot.item, clinic_.units[worn.unit].lot}];
      }
    }
  }
  if (counts.empty()) return;
  const auto most = std::ranges::max_element(
      counts, [](const auto& a, const auto& b) { return a.second < b.second; });
  const auto& [item, lot] = most->first;
  shop_.quarantine(item, lot);
  for (Visitor& visitor : visitors_) {
    for (FittedLimb& fitted : visitor.limbs) {
      for (Slot& slot : fitted.slots) {
        for (std::size_t i = slot.worn.size(); slot.item == item && i-- > 0;) {
          if (clinic_.units[slot.worn[i].unit].lot == lot) end(slot, i, today, EndReason::recall);
        }
      }
    }
  }
}

}  // namespace sparewell::sample
