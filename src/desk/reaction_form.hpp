/// What the window asks and shows about skin reactions.
#pragma once

#include <string>

#include "desk/stock_form.hpp"
#include "desk/worn_drawing.hpp"

namespace sparewell::desk {

/// To record a reaction of the patient.
[[nodiscard]] StockForm reaction_form(const Day& day, const PatientRef& patient);

/// To record the last day of a reaction. Refuses where none lasts.
[[nodiscard]] Expected<StockForm> healed_form(const Day& day, const PatientRef& patient);

/// What the window says of a patient's reactions.
struct ReactionsView {
  std::string intro;
  std::string reference;  ///< of the patient
  WornChart chart;
  std::string text;  ///< verdicts and cautions first, then the log and the ranking
};

[[nodiscard]] ReactionsView reactions_view(const Day& day, const PatientRef& patient);

}  // namespace sparewell::desk
