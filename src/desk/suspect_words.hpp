/// What the reactions of a patient speak for, in plain words.
#pragma once

#include <string>
#include <vector>

#include "care/suspects.hpp"

namespace sparewell::desk {

/// How much a ranking says.
enum class Telling {
  no_reaction,  ///< none while parts were worn
  no_contrast,  ///< all was worn on every day or on none, so that days tell nothing
  too_little,   ///< nothing stands out
  /// One answer has more than an even chance, two onsets at least, and the interval of its ratio
  /// above 1.
  leads
};

[[nodiscard]] Telling telling(const care::Suspects& found, const care::Ranking& ranking);

/// One or two sentences on what can be told of one question; `what` is "substance" or "part".
[[nodiscard]] std::string ranking_verdict(const care::Suspects& found, const care::Ranking& ranking,
                                          const std::string& what);

/// "4 of 5 reactions began while mineral oil was worn (38 % of the time) ..."
[[nodiscard]] std::string suspect_words(const care::Suspect& suspect);

/// "mineral oil"; with how it is known where it is not declared.
[[nodiscard]] std::string suspect_name(const care::Exposure& exposure);

/// What stands against the comparison, a sentence each: days without parts, unknown contents; and
/// what the patient is known to be sensitive to.
[[nodiscard]] std::vector<std::string> suspect_limits(const care::Suspects& found);

/// That this is no diagnosis, and who decides.
[[nodiscard]] std::vector<std::string> suspect_cautions();

/// By the substances that the program knows, for each side on which the patient wore parts.
[[nodiscard]] std::vector<care::Suspects> suspects_of_patient(const Clinic& clinic,
                                                              const PatientRef& patient,
                                                              Date today);

/// All of it for one side.
[[nodiscard]] std::string suspects_text(const care::Suspects& found);

}  // namespace sparewell::desk
