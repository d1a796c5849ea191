/// What a patient's recorded sensitivities say about an item.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "care/gravity.hpp"
#include "care/substances.hpp"
#include "clinic/item.hpp"
#include "clinic/patient.hpp"

namespace sparewell::care {

enum class Verdict {
  conflict,           ///< a declared constituent is the substance, or a kind of it
  possible_conflict,  ///< it may hold it: by its material, as a residue, or as one of a group
  not_declared,       ///< what is declared does not allow an answer
  none_known,         ///< everything declared is known and none of it is related
  nothing_recorded    ///< nothing is recorded of the patient, which says nothing about the patient
};

/// One row of resources/substances/materials.csv: what a material lets one assume.
struct MaterialContent {
  Material material = Material::other;
  std::string substance;
  std::string source;
};

/// What is known about substances.
struct SubstanceTable {
  Substances substances;
  std::vector<MaterialContent> contents;
};

/// The answer for one recorded substance; one with `verdict` nothing_recorded when there is none.
struct SensitivityVerdict {
  Verdict verdict = Verdict::nothing_recorded;
  Sensitivity recorded;
  SubstancePath path;    ///< for the two conflicts
  bool assumed = false;  ///< the path begins at what the material lets one assume
  bool upwards = false;  ///< the path leads from the recorded substance up to a declared group
  std::vector<std::string> unknown;  ///< names that the table of substances does not have
};

[[nodiscard]] Gravity gravity(Verdict verdict);

/// One verdict for each recorded substance of `patient`, the gravest first. Missing data never
/// gives none_known.
[[nodiscard]] std::vector<SensitivityVerdict> check_sensitivities(
    const Item& item, const PatientRef& patient, std::span<const Sensitivity> sensitivities,
    const SubstanceTable& table);

/// True for parts that usually lie against the skin (common practice, no source).
[[nodiscard]] bool usually_touches_skin(Kind kind);

}  // namespace sparewell::care
