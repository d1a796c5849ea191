/// Tells a scanner, which is a keyboard that types fast and ends with Enter, from a person.
#pragma once

#include <chrono>
#include <string>

namespace sparewell::desk {

/// Is told every printable key with its moment, from any fixed beginning.
class ScanBurst {
 public:
  using Moment = std::chrono::milliseconds;
  /// The longest time between two keys of a scanner; persons need some 100 ms (common practice, no
  /// source).
  static constexpr Moment longest_gap{35};
  /// Shorter texts are not taken for a scan: two quick keys are no label.
  static constexpr std::size_t fewest_keys = 6;

  void key(char typed, Moment at);
  /// Enter was pressed: what the scanner sent, or "" when a person typed. Begins anew.
  [[nodiscard]] std::string entered(Moment at);
  /// Another key, such as one with Ctrl, was pressed.
  void broken() { typed_.clear(); }

 private:
  std::string typed_;
  Moment last_{0};
};

}  // namespace sparewell::desk
