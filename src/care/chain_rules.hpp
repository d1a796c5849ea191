/// Which functions a suspension needs at the same time, and which parts do them: rules as values.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "clinic/item.hpp"

namespace sparewell::care {

/// What some unit must be doing.
enum class Function {
  locking_liner,
  cushion_liner,
  sealing_liner,
  sleeve,
  pin,
  lock,
  valve,
  pump,
  plain_liner
};

}  // namespace sparewell::care

namespace sparewell {
template <>
std::span<const std::string_view> words<care::Function>();
}  // namespace sparewell

namespace sparewell::care {

/// One way in which a suspension holds: suction seals by a cushion liner under a sleeve, or by a
/// liner with seal.
struct SuspensionWay {
  Suspension suspension = Suspension::pin;
  std::string way;
  std::vector<Function> needed;   ///< all at the same time
  std::vector<Function> allowed;  ///< have work in it without being needed
};

/// A part of this kind, and of this attachment where one is named, does the function.
struct FunctionPart {
  Function function = Function::sleeve;
  Kind kind = Kind::sleeve;
  std::optional<Attachment> attachment;
};

/// Materials that need looking after where they meet.
struct MaterialPair {
  Kind kind = Kind::liner;
  Material material = Material::other;
  Kind other_kind = Kind::sleeve;
  Material other_material = Material::other;
  std::string advice;  ///< words that follow "oil may ...", without a full stop
  std::string source;
};

/// The tables of resources/suspension. Pure lookups; the default has no rule.
struct ChainRules {
  std::vector<SuspensionWay> ways;  ///< of one suspension in the order of preference
  std::vector<FunctionPart> parts;
  std::vector<Function> threaded;  ///< parts of these functions carry one thread
  std::vector<MaterialPair> materials;

  /// What an item does; nothing for socks.
  [[nodiscard]] std::vector<Function> functions_of(const Item& item) const;
  /// The way of which most functions are there, of several such the one that lacks least, then the
  /// first; nullptr for a suspension without rules.
  [[nodiscard]] const SuspensionWay* way_of(Suspension suspension,
                                            std::span<const Function> held) const;
  /// True when some way of the suspension needs or allows the function.
  [[nodiscard]] bool has_work(Function function, Suspension suspension) const;
  [[nodiscard]] bool is_threaded(const Item& item) const;
};

}  // namespace sparewell::care
