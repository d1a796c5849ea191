/// The words for the fit of what a patient wears.
#pragma once

#include <string>
#include <vector>

#include "desk/fit_view.hpp"
#include "desk/trend_words.hpp"

namespace sparewell::desk {

/// "Left, LG-24 (2 in use)".
[[nodiscard]] std::string fit_title(const FitPart& part);

/// The check, the trend, what is foreseen, and what follows: a sentence or two each.
[[nodiscard]] std::vector<std::string> fit_sentences(const FitPart& part, Date today);

/// One line for a list over all patients.
[[nodiscard]] std::string leaving_line(const FitPart& part, Date today);

/// How many parts the list says nothing of, and why; "" when it is complete.
[[nodiscard]] std::string not_known_words(const LeavingParts& leaving);

[[nodiscard]] std::string sock_words(const SockFinding& socks);

/// What a person should do first: says so where nothing is worn with a size or nothing is measured.
/// "" otherwise.
[[nodiscard]] std::string nothing_known_words(const FitReport& report);

/// Beside every forecast of a limb.
[[nodiscard]] std::string fit_caution();

/// All of it, a line each.
[[nodiscard]] std::string fit_text(const FitReport& report);

}  // namespace sparewell::desk
