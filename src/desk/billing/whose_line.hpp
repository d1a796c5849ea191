/// Finds whose line a file of claims or payments is about.
#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "exchange/claim_rows.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

/// The patient, or why it is not known: "what is wrong and what to do", naming nobody.
struct WhoseLine {
  PatientRef patient;
  std::string reason;
};

class PatientsOfLines {
 public:
  explicit PatientsOfLines(const store::Snapshot& snapshot);

  /// By the reference that the file gives; else by the claim, if lines of it are stored; else by
  /// the member number (of those who share it the one whose birth date or given name fits), by a
  /// member number that is our own reference, or by given name, family name and birth date if one
  /// patient alone has them. A claim that is stored for somebody else is refused.
  [[nodiscard]] WhoseLine find(const exchange::PersonClue& clue,
                               const std::string& claim_ref) const;
  /// Lines of a claim that is now stored, for those that follow.
  void note(const std::string& claim_ref, const PatientRef& patient);

 private:
  using Patients = std::vector<const Patient*>;
  [[nodiscard]] Patients by_person(const exchange::PersonClue& clue) const;

  std::vector<store::Row<Patient>> rows_;
  std::unordered_map<std::string, const Patient*> by_ref_;
  std::unordered_map<std::string, Patients> by_member_;
  std::unordered_map<std::string, Patients> by_name_;
  std::unordered_map<std::string, std::string> by_claim_;  ///< "" for a claim of several patients
};

/// How the clinic spells payers: names in files take its spelling where they differ in letter case
/// or signs between words alone.
class PayerNames {
 public:
  explicit PayerNames(const store::Snapshot& snapshot);
  [[nodiscard]] std::string spelt(const std::string& name) const;

 private:
  std::unordered_map<std::string, std::string> names_;
};

}  // namespace sparewell::desk
