#include "care/part_state.hpp"

#include <algorithm>

#include "care/worn.hpp"

namespace sparewell::care {
namespace {

/// Parts without a recorded lot answer only for themselves.
bool same_lot(const Lot& lot, const ItemCode& item, const std::string& number) {
  return !lot.lot.empty() && lot.item == item && lot.lot == number;
}

bool was_recalled(const Clinic& clinic, const Lot& lot, Date day) {
  return std::ranges::any_of(clinic.units, [&](const Unit& unit) {
    return same_lot(lot, unit.item, unit.lot) && unit.end_reason == EndReason::recall &&
           unit.ended_on && *unit.ended_on <= day;
  });
}

bool others_in_quarantine(const Clinic& clinic, const Lot& lot, std::span<const Place> places) {
  return std::ranges::any_of(clinic.shelf, [&](const StockLevel& level) {
    return level.quantity > 0 && same_lot(lot, level.lot.item, level.lot.lot) &&
           sort_of_place(places, level.place) == PlaceSort::quarantine;
  });
}

}  // namespace

Gravity PieceFinding::gravity() const {
  switch (fault) {
    case PieceFault::expired:
    case PieceFault::quarantined:
    case PieceFault::recalled:
      return Gravity::stops;
    default:
      return Gravity::ask;
  }
}

std::vector<PieceFinding> check_pieces(const Clinic& clinic, const Item& item,
                                       std::span<const StockLevel> taken, Date day,
                                       std::optional<int> expected_days,
                                       std::span<const Place> places) {
  std::vector<PieceFinding> found;
  for (const auto& piece : taken) {
    const auto& lot = piece.lot;
    const bool quarantined = sort_of_place(places, piece.place) == PlaceSort::quarantine;
    if (lot.use_by && *lot.use_by < day) {
      found.push_back({PieceFault::expired, piece});
    } else if (lot.use_by && expected_days && *lot.use_by < day + days{*expected_days}) {
      found.push_back({PieceFault::short_dated, piece});
    }
    if (!lot.use_by && item.shelf_life_days) found.push_back({PieceFault::no_use_by, piece});
    if (was_recalled(clinic, lot, day)) found.push_back({PieceFault::recalled, piece});
    if (quarantined) {
      found.push_back({PieceFault::quarantined, piece});
    } else if (others_in_quarantine(clinic, lot, places)) {
      found.push_back({PieceFault::others_quarantined, piece});
    }
  }
  return found;
}

Gravity gravity(PatientFault fault) {
  return fault == PatientFault::deceased ? Gravity::stops : Gravity::ask;
}

std::vector<PatientFault> check_patient(const ChainRules& rules, const Clinic& clinic,
                                        const ClinicIndex& index, const PatientRef& patient,
                                        Side side, const Item& item, Date day) {
  std::vector<PatientFault> found;
  const bool deceased = std::ranges::any_of(clinic.units, [&](const Unit& unit) {
    return unit.patient == patient && unit.end_reason == EndReason::deceased && unit.ended_on &&
           *unit.ended_on <= day;
  });
  if (deceased) found.push_back(PatientFault::deceased);
  const auto worn = worn_on(clinic, index, patient, side, day);
  if (!worn.prosthesis) found.push_back(PatientFault::no_prosthesis);
  const auto alike = std::ranges::count_if(worn.items, [&](const Item* other) {
    return other->kind == item.kind &&
           rules.functions_of(*other) == rules.functions_of(item);
  });
  if (item.kind != Kind::sock && alike >= 2) found.push_back(PatientFault::two_in_use);
  return found;
}

}  // namespace sparewell::care
