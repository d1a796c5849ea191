/// What a patient wears on one side on a day.
#pragma once

#include <span>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::care {

/// The prosthesis in use on that side at the end of `day`, the one delivered last; nullptr when
/// none is recorded.
[[nodiscard]] const Prosthesis* prosthesis_in_use(std::span<const Prosthesis> prostheses,
                                                  const PatientRef& patient, Side side, Date day);

struct Worn {
  const Prosthesis* prosthesis = nullptr;  ///< the latest delivered; nullptr when there is none
  std::vector<const Item*> items;          ///< of each unit in use, those in the drawer included
  int without_item = 0;                    ///< units in use whose item the catalogue does not know
};

/// Points into `clinic`, which must outlive the answer. `index` is that of the clinic.
[[nodiscard]] Worn worn_on(const Clinic& clinic, const ClinicIndex& index,
                           const PatientRef& patient, Side side, Date day);

}  // namespace sparewell::care
