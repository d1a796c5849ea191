/// The computation of a day in stages, so that it can say how far it is and be stopped between
/// them.
#pragma once

#include <functional>

#include "desk/assessment.hpp"

namespace sparewell::desk {

enum class AssessmentStage { wear, orders };

/// Called before each stage; false stops the computation.
using AssessmentWatch = std::function<bool(AssessmentStage)>;

/// As desk::assess; empty when `goes_on` stopped it.
[[nodiscard]] std::optional<Assessment> assess_in_stages(Clinic clinic,
                                                         const wear::PriorTable& priors, Date today,
                                                         const supply::OrderPolicy& policy,
                                                         const AssessmentWatch& goes_on);

}  // namespace sparewell::desk
