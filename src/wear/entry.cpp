#include "wear/entry.hpp"

#include <algorithm>

namespace sparewell::wear {
namespace {

bool is_numbered(const Unit& unit) {
  return !unit.lot.empty() || !unit.serial.empty();
}

void take_earlier(std::optional<Date>& earliest, Date day) {
  if (!earliest || day < *earliest) earliest = day;
}

}  // namespace

Entries::Entries(const Clinic& clinic, Date today, std::optional<Date> records_begin)
    : records_begin_{records_begin} {
  for (const Unit& unit : clinic.units) {
    if (unit.issued_on > today) continue;
    Patient& patient = patients_[unit.patient];
    if (is_numbered(unit)) take_earlier(patient.first_numbered, unit.issued_on);
    if (unit.ended_on && *unit.ended_on <= today)
      take_earlier(patient.first_ending, *unit.ended_on);
  }
}

std::optional<Date> Entries::of(const Unit& unit) const {
  std::optional<Date> entry;
  if (records_begin_ && unit.issued_on < *records_begin_) entry = records_begin_;
  if (is_numbered(unit)) return entry;
  const auto found = patients_.find(unit.patient);
  if (found == patients_.end() || !found->second.first_numbered) return entry;
  const auto [first, ending] = found->second;
  if (unit.issued_on >= *first || (ending && *ending <= *first)) return entry;
  return entry ? std::max(*entry, *first) : *first;
}

}  // namespace sparewell::wear
