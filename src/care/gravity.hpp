/// How much a finding weighs for the person who is about to hand over a part.
#pragma once

namespace sparewell::care {

enum class Gravity {
  stops,  ///< not to be handed over unless a named clinician decides otherwise
  ask,    ///< a person has to look or ask before it is handed over
  note    ///< worth knowing
};

}  // namespace sparewell::care
