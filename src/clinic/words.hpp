/// The trade's words as closed lists, each with the text used in files and on screens.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "clinic/say.hpp"

namespace sparewell {

enum class Kind { liner, sleeve, lock, pin, valve, pump, sock };
enum class Attachment { locking, cushion, seal, none };
enum class Material { silicone, mineral_oil_gel, urethane, neoprene, fabric, metal, other };
enum class Side { left, right };
enum class Level {
  transtibial,
  transfemoral,
  ankle_disarticulation,
  knee_disarticulation,
  transradial,
  transhumeral,
  other
};
enum class Suspension { pin, lanyard, sleeve, suction, vacuum, anatomical, belt };
enum class Stage { preparatory, definitive };
/// Functional level of the US lower-limb classification, 0 (does not walk) to 4 (high impact).
enum class Activity { k0, k1, k2, k3, k4 };
enum class Sweating { low, normal, high };
enum class EndReason {
  hole,
  tear,
  stretched,
  delaminated,
  lost_grip,
  leak,
  worn,
  lost,
  resized,
  reaction,
  recall,
  upgrade,
  returned,
  deceased,
  other
};

/// True when the reason means that the part wore out: an event for the wear model. Every other
/// reason is censoring.
[[nodiscard]] bool is_wear(EndReason reason);

/// All words of a list, in the order of the enumeration, as written in files.
template <class Enum>
[[nodiscard]] std::span<const std::string_view> words();

template <class Enum>
[[nodiscard]] std::string_view word(Enum value) {
  return words<Enum>()[static_cast<std::size_t>(value)];
}

/// The word in the language of the program: for screens, never for files.
template <class Enum>
[[nodiscard]] std::string shown_word(Enum value) {
  return said(std::string{word(value)}.c_str());
}

/// Letter case is ignored, and so is the difference between space, hyphen and underscore.
[[nodiscard]] bool same_word(std::string_view a, std::string_view b);

/// nullopt for a word that is not in the list.
template <class Enum>
[[nodiscard]] std::optional<Enum> parse_word(std::string_view text) {
  const auto list = words<Enum>();
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (same_word(list[i], text)) return static_cast<Enum>(i);
  }
  return std::nullopt;
}

/// "liner, sleeve, lock": for sentences that say what is allowed.
template <class Enum>
[[nodiscard]] std::string allowed_words() {
  std::string joined;
  for (const auto item : words<Enum>()) {
    if (!joined.empty()) joined += ", ";
    joined += item;
  }
  return joined;
}

}  // namespace sparewell
