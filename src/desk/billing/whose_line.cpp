#include "desk/billing/whose_line.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/text.hpp"

namespace sparewell::desk {
namespace {

std::string plain(std::string_view name) {
  auto made = exchange::lower_case(exchange::trimmed(name));
  std::ranges::replace_if(
      made, [](char c) { return c == '-' || c == '_'; }, ' ');
  return made;
}

std::string name_key(std::string_view given, std::string_view family, Date born) {
  return fmt::format("{}\x1F{}\x1F{}", plain(given), plain(family), iso_text(born));
}

/// Somebody else under the same member number: another birth date, or where it is not known,
/// another given name.
bool contradicts(const Patient& patient, const exchange::PersonClue& clue) {
  if (patient.birth_date && clue.birth_date) return *patient.birth_date != *clue.birth_date;
  return !patient.given_name.empty() && !clue.given_name.empty() &&
         plain(patient.given_name) != plain(clue.given_name);
}

}  // namespace

PatientsOfLines::PatientsOfLines(const store::Snapshot& snapshot) : rows_{snapshot.all<Patient>()} {
  for (const auto& row : rows_) {
    const auto& patient = row.record;
    by_ref_.emplace(patient.ref.text, &patient);
    if (!patient.member_id.empty()) by_member_[plain(patient.member_id)].push_back(&patient);
    if (patient.birth_date && !patient.family_name.empty()) {
      by_name_[name_key(patient.given_name, patient.family_name, *patient.birth_date)].push_back(
          &patient);
    }
  }
  for (const auto& row : snapshot.all<ClaimLine>()) note(row.record.claim_ref, row.record.patient);
}

void PatientsOfLines::note(const std::string& claim_ref, const PatientRef& patient) {
  const auto [known, is_new] = by_claim_.emplace(claim_ref, patient.text);
  if (!is_new && known->second != patient.text) known->second.clear();
}

PatientsOfLines::Patients PatientsOfLines::by_person(const exchange::PersonClue& clue) const {
  Patients found;
  if (!clue.member_id.empty()) {
    if (const auto members = by_member_.find(plain(clue.member_id)); members != by_member_.end()) {
      std::ranges::copy_if(members->second, std::back_inserter(found),
                           [&](const Patient* each) { return !contradicts(*each, clue); });
    }
    if (!found.empty()) return found;
    if (const auto own = by_ref_.find(clue.member_id); own != by_ref_.end()) {
      if (!contradicts(*own->second, clue)) return {own->second};
    }
  }
  if (clue.birth_date && !clue.family_name.empty()) {
    const auto named = by_name_.find(name_key(clue.given_name, clue.family_name, *clue.birth_date));
    if (named != by_name_.end()) return named->second;
  }
  return found;
}

WhoseLine PatientsOfLines::find(const exchange::PersonClue& clue,
                                const std::string& claim_ref) const {
  if (!clue.patient_ref.empty()) {
    if (by_ref_.contains(clue.patient_ref)) return {{clue.patient_ref}, {}};
    return {{},
            say("'{}' is not in the database; add the patient or correct it",
                exchange::excerpt(clue.patient_ref))};
  }
  const auto found = by_person(clue);
  const auto claim = by_claim_.find(claim_ref);
  if (claim != by_claim_.end() && !claim->second.empty()) {
    const bool fits = found.empty() || std::ranges::any_of(found, [&](const Patient* each) {
                        return each->ref.text == claim->second;
                      });
    if (fits) return {{claim->second}, {}};
    return {{},
            say("is not {}, whose claim {} is by the records; correct whichever is wrong",
                claim->second, exchange::excerpt(claim_ref))};
  }
  if (found.size() == 1) return {found.front()->ref, {}};
  if (found.size() > 1) return {{}, said("fits several patients; fill in patient_ref")};
  return {{},
          said("is not known: nobody has this member number, or this name and birth date; fill in "
               "patient_ref")};
}

PayerNames::PayerNames(const store::Snapshot& snapshot) {
  const auto take = [&](const std::string& name) {
    if (!name.empty()) names_.emplace(plain(name), name);
  };
  for (const auto& row : snapshot.all<Patient>()) take(row.record.payer);
  for (const auto& row : snapshot.all<PayerRule>()) take(row.record.payer);
  for (const auto& row : snapshot.all<ClaimLine>()) take(row.record.payer);
  for (const auto& row : snapshot.all<Remittance>()) take(row.record.payer);
}

std::string PayerNames::spelt(const std::string& name) const {
  const auto known = names_.find(plain(name));
  return known == names_.end() ? name : known->second;
}

}  // namespace sparewell::desk
