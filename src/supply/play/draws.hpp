/// Chance that is the same however often it is asked: draws by place, not by turn.
#pragma once

#include <cstdint>
#include <string_view>

namespace sparewell::supply::play {

/// A number for a text that is the same on every machine: FNV-1a, 64 bits (from memory).
[[nodiscard]] constexpr std::uint64_t number_of(std::string_view text,
                                                std::uint64_t start = 0xcbf29ce484222325U) {
  for (const char c : text) {
    start ^= static_cast<unsigned char>(c);
    start *= 0x100000001b3U;
  }
  return start;
}

/// The finaliser of SplitMix64 (Steele, Lea and Flood 2014, from memory): mixes every bit.
[[nodiscard]] constexpr std::uint64_t mixed(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15U;
  x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9U;
  x = (x ^ (x >> 27U)) * 0x94d049bb133111ebU;
  return x ^ (x >> 31U);
}

/// Uniform above 0 and below 1, fixed by seed, what it is for, and a counter: whoever asks for the
/// same place gets the same draw, so that all policies meet the same world.
[[nodiscard]] constexpr double uniform_at(std::uint64_t seed, std::uint64_t subject,
                                          std::uint64_t counter) {
  const std::uint64_t bits = mixed(mixed(mixed(seed) ^ subject) + counter);
  return (static_cast<double>(bits >> 11U) + 0.5) * 0x1.0p-53;
}

}  // namespace sparewell::supply::play
