/// The same work on many things at once, on all cores.
#pragma once

#include <cstddef>
#include <functional>

namespace sparewell {

/// Calls work(0) ... work(count - 1), each once, in any order and from several threads; returns when
/// all are done. What they write must not overlap, so that the result does not depend on the order.
/// An exception stops the rest and is thrown on.
void in_parallel(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace sparewell
