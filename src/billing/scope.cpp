#include "billing/scope.hpp"

#include <algorithm>
#include <tuple>
#include <unordered_map>

namespace sparewell::billing {
namespace {

bool is_numbered(const Unit& unit) {
  return !unit.lot.empty() || !unit.serial.empty();
}

void take_earlier(std::optional<Date>& earliest, Date day) {
  if (!earliest || day < *earliest) earliest = day;
}

auto place_of(const Unit& unit) {
  return std::tie(unit.issued_on, unit.side, unit.item, unit.lot, unit.serial, unit.copy);
}

auto place_of(const ClaimLine& line) {
  return std::tie(line.service_date, line.claim_ref, line.code, line.side, line.modifiers,
                  line.copy, line.submission, line.quantity);
}

auto place_of(const Prosthesis& prosthesis) {
  return std::tie(prosthesis.delivered_on, prosthesis.side, prosthesis.level,
                  prosthesis.suspension);
}

template <class Record>
void sort_by_content(std::vector<std::size_t>& positions, const std::vector<Record>& records) {
  std::ranges::stable_sort(positions, [&](std::size_t a, std::size_t b) {
    return place_of(records[a]) < place_of(records[b]);
  });
}

void sort_all(PatientRecords& one, const Clinic& clinic) {
  sort_by_content(one.units, clinic.units);
  sort_by_content(one.claim_lines, clinic.claim_lines);
  sort_by_content(one.prostheses, clinic.prostheses);
}

}  // namespace

std::vector<PatientRecords> records_of_patients(const Clinic& clinic) {
  std::vector<PatientRecords> all;
  std::unordered_map<PatientRef, std::size_t> places;
  const auto of = [&](const PatientRef& patient) -> PatientRecords& {
    const auto [place, is_new] = places.try_emplace(patient, all.size());
    if (is_new) all.push_back({patient, {}, {}, {}});
    return all[place->second];
  };
  for (std::size_t i = 0; i < clinic.units.size(); ++i) {
    of(clinic.units[i].patient).units.push_back(i);
  }
  for (std::size_t i = 0; i < clinic.claim_lines.size(); ++i) {
    of(clinic.claim_lines[i].patient).claim_lines.push_back(i);
  }
  for (std::size_t i = 0; i < clinic.prostheses.size(); ++i) {
    const auto found = places.find(clinic.prostheses[i].patient);
    if (found != places.end()) all[found->second].prostheses.push_back(i);
  }
  for (auto& one : all) sort_all(one, clinic);
  std::ranges::sort(all, {}, &PatientRecords::patient);
  return all;
}

PatientRecords records_of_patient(const Clinic& clinic, const PatientRef& patient) {
  PatientRecords one{patient, {}, {}, {}};
  const auto gather = [&](const auto& records, std::vector<std::size_t>& positions) {
    for (std::size_t i = 0; i < records.size(); ++i) {
      if (records[i].patient == patient) positions.push_back(i);
    }
  };
  gather(clinic.units, one.units);
  gather(clinic.claim_lines, one.claim_lines);
  gather(clinic.prostheses, one.prostheses);
  sort_all(one, clinic);
  return one;
}

std::optional<Date> books_begin(const Clinic& clinic) {
  if (clinic.settings.billing_begins) return clinic.settings.billing_begins;
  std::optional<Date> first;
  for (const auto& line : clinic.claim_lines) take_earlier(first, line.service_date);
  return first;
}

Scope::Scope(const Clinic& clinic, const PatientRecords& records, std::optional<Date> begin)
    : begin_{begin} {
  for (const std::size_t position : records.units) {
    const Unit& unit = clinic.units[position];
    if (is_numbered(unit)) take_earlier(first_numbered_, unit.issued_on);
    if (unit.ended_on) take_earlier(first_ending_, *unit.ended_on);
  }
}

bool Scope::brought_along(const Unit& unit) const {
  if (is_numbered(unit) || !first_numbered_ || unit.issued_on >= *first_numbered_) return false;
  return !first_ending_ || *first_ending_ > *first_numbered_;
}

std::optional<Standing> Scope::of(const Unit& unit) const {
  if (!begin_) return std::nullopt;
  if (unit.issued_on < *begin_) {
    const bool shortly = days_between(unit.issued_on, *begin_) <= ordinary_days;
    return shortly ? std::optional{Standing::before_books} : std::nullopt;
  }
  // Its lot may only be missing from the records: a claim that answers to it says so.
  if (brought_along(unit)) return Standing::before_books;
  const bool soon = unit.ended_on && unit.end_reason == EndReason::returned &&
                    days_between(unit.issued_on, *unit.ended_on) <= ordinary_days;
  return soon ? Standing::came_back : Standing::expected;
}

std::optional<Side> billed_side(const ClaimLine& line) {
  const auto has = [&](const char* modifier) {
    return std::ranges::find(line.modifiers, modifier) != line.modifiers.end();
  };
  const bool left = has("LT");
  const bool right = has("RT");
  if (left && right) return std::nullopt;
  if (left) return Side::left;
  if (right) return Side::right;
  return line.side;
}

}  // namespace sparewell::billing
