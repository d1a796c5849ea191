// Writes stored claims as 837, and payments that answer them as 835.
#pragma once

#include <algorithm>
#include <map>
#include <span>

#include "clinic/clinic.hpp"
#include "x12_made.hpp"

namespace sparewell::exchange::testing {

inline std::string compact(Date day) {
  auto text = iso_text(day);
  std::erase(text, '-');
  return text;
}

inline std::string procedure_of(const ClaimLine& line) {
  auto text = fmt::format("HC:{}", line.code);
  for (const auto& modifier : line.modifiers) text += fmt::format(":{}", modifier);
  return text;
}

/// The lines of each claim; in the order in which the claims come.
inline std::vector<std::vector<const ClaimLine*>> by_claim(std::span<const ClaimLine> lines) {
  std::map<std::string, std::size_t> known;
  std::vector<std::vector<const ClaimLine*>> claims;
  for (const auto& line : lines) {
    const auto [at, is_new] = known.emplace(line.claim_ref, claims.size());
    if (is_new) claims.emplace_back();
    claims[at->second].push_back(&line);
  }
  return claims;
}

/// Patients are named by their member number, or by our reference where they have none.
inline MadeTransaction claims_written(std::span<const ClaimLine> lines,
                                      const std::map<PatientRef, Patient>& patients,
                                      const std::string& payer) {
  MadeTransaction made{"837", {"BHT*0019*00*1*20261125*0930*CH", "HL*1**20*1"}};
  int level = 1;
  for (const auto& claim : by_claim(lines)) {
    const auto& first = *claim.front();
    const auto& patient = patients.at(first.patient);
    std::int64_t total = 0;
    for (const auto* line : claim) total += line->charge ? std::abs(line->charge->minor) : 0;
    const auto plain = [&](std::int64_t minor) {
      return plain_text({minor, first.charge ? first.charge->currency : Currency{}});
    };
    const char* frequency = first.submission == Submission::reversal      ? "8"
                            : first.submission == Submission::replacement ? "7"
                                                                          : "1";
    const auto member = patient.member_id.empty() ? patient.ref.text : patient.member_id;
    made.segments.push_back(fmt::format("HL*{}*1*22*0", ++level));
    made.segments.push_back(
        fmt::format("NM1*IL*1*{}*{}****MI*{}", patient.family_name, patient.given_name, member));
    if (patient.birth_date) {
      made.segments.push_back(fmt::format("DMG*D8*{}*U", compact(*patient.birth_date)));
    }
    made.segments.push_back(fmt::format("NM1*PR*2*{}", first.payer.empty() ? payer : first.payer));
    made.segments.push_back(
        fmt::format("CLM*{}*{}***11:B:{}", first.claim_ref, plain(total), frequency));
    int number = 0;
    for (const auto* line : claim) {
      made.segments.push_back(fmt::format("LX*{}", ++number));
      made.segments.push_back(fmt::format("SV1*{}*{}*UN*{}", procedure_of(*line),
                                          plain(std::abs(line->charge ? line->charge->minor : 0)),
                                          line->quantity));
      made.segments.push_back(fmt::format("DTP*472*D8*{}", compact(line->service_date)));
      made.segments.push_back(fmt::format("REF*6R*{}-{}", line->claim_ref, number));
    }
  }
  return made;
}

/// Pays four fifths of each line; the rest is contractual.
inline MadeTransaction payment_written(std::span<const ClaimLine> lines, const std::string& payer,
                                       const std::string& reference, Date paid_on) {
  MadeTransaction made{"835", {}};
  std::vector<std::string> body;
  std::int64_t total = 0;
  for (const auto& claim : by_claim(lines)) {
    std::int64_t charged = 0;
    std::int64_t paid = 0;
    std::vector<std::string> services;
    int number = 0;
    for (const auto* line : claim) {
      const auto charge = line->charge ? line->charge->minor : 0;
      const auto part = charge * 4 / 5;
      charged += charge;
      paid += part;
      const auto plain = [](std::int64_t minor) { return plain_text({minor, {"USD"}}); };
      services.push_back(fmt::format("SVC*{}*{}*{}**{}", procedure_of(*line), plain(charge),
                                     plain(part), line->quantity));
      services.push_back(fmt::format("DTM*472*{}", compact(line->service_date)));
      services.push_back(fmt::format("CAS*CO*45*{}", plain(charge - part)));
      services.push_back(fmt::format("REF*6R*{}-{}", line->claim_ref, ++number));
    }
    body.push_back(fmt::format("CLP*{}*1*{}*{}**CI*PC-{}", claim.front()->claim_ref,
                               plain_text({charged, {"USD"}}), plain_text({paid, {"USD"}}),
                               claim.front()->claim_ref));
    body.insert(body.end(), services.begin(), services.end());
    total += paid;
  }
  made.segments = {
      fmt::format("BPR*I*{}*C*ACH*CCP**********{}", plain_text({total, {"USD"}}), compact(paid_on)),
      fmt::format("TRN*1*{}*1", reference), fmt::format("N1*PR*{}", payer)};
  made.segments.insert(made.segments.end(), body.begin(), body.end());
  return made;
}

}  // namespace sparewell::exchange::testing
