/// An expected refusal: a value, not an exception, carrying one clear sentence for a person.
#pragma once

#include <string>

#include <tl/expected.hpp>

namespace sparewell {

/// What happened, what was kept, and what to do, in one sentence without a trailing line break.
struct Refusal {
  std::string sentence;
};

template <class T>
using Expected = tl::expected<T, Refusal>;

inline tl::unexpected<Refusal> refuse(std::string sentence) {
  return tl::unexpected<Refusal>(Refusal{std::move(sentence)});
}

}  // namespace sparewell
