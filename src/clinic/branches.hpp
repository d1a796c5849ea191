/// The branches of a clinic: its stores, and which patients belong to which.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell {

/// Every store that is recorded, has stock or promised pieces, or has patients. Refers to nothing.
class Branches {
 public:
  explicit Branches(const Clinic& clinic);

  /// The main place first, the others by name; never empty.
  [[nodiscard]] const std::vector<std::string>& names() const { return names_; }
  [[nodiscard]] bool several() const { return names_.size() > 1; }
  /// Position in names(); nullopt for what is not a store of the clinic.
  [[nodiscard]] std::optional<std::size_t> position(const std::string& name) const;
  /// Where the patient belongs, as a position in names(). The main place for patients of whom no
  /// place is recorded, or one that is no longer a store.
  [[nodiscard]] std::size_t of(const PatientRef& patient) const;

 private:
  std::vector<std::string> names_;
  std::unordered_map<PatientRef, std::size_t> elsewhere_;  ///< than at the main place
};

}  // namespace sparewell
