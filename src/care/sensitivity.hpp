/// What a patient's recorded sensitivities say about an item.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "care/gravity.hpp"
#include "care/substances.hpp"
#include "clinic/decision.hpp"
#include "clinic/item.hpp"
#include "clinic/patient.hpp"

namespace sparewell::care {

using sparewell::Verdict;

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
  /// A clinician's decision that answers this verdict: no graver than the one decided about, and
  /// the sensitivity not noted anew since.
  std::optional<SensitivityDecision> decided{};
};

/// Of a verdict that nobody decided about.
[[nodiscard]] Gravity gravity(Verdict verdict);
/// A decided conflict is still asked about before the part changes hands, and stops nothing.
[[nodiscard]] Gravity gravity(const SensitivityVerdict& verdict);

/// The answer for one recorded sensitivity of whoever has it, without decisions.
[[nodiscard]] SensitivityVerdict verdict_of(const Item& item, const Sensitivity& recorded,
                                            const SubstanceTable& table);

/// The decision among `decisions` that answers the verdict on `day`, the latest of several.
[[nodiscard]] std::optional<SensitivityDecision> decision_on(
    const SensitivityVerdict& verdict, const ItemCode& item,
    std::span<const SensitivityDecision> decisions, Date day);

/// One verdict for each recorded substance of `patient`, the gravest first, those that a decision
/// in force on `day` answers after the others of their kind. Missing data never gives none_known.
[[nodiscard]] std::vector<SensitivityVerdict> check_sensitivities(
    const Item& item, const PatientRef& patient, std::span<const Sensitivity> sensitivities,
    const SubstanceTable& table, std::span<const SensitivityDecision> decisions = {},
    Date day = {});

/// True for parts that usually lie against the skin (common practice, no source).
[[nodiscard]] bool usually_touches_skin(Kind kind);

}  // namespace sparewell::care
