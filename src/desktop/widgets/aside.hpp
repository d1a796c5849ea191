/// Short work with the clinic file, such as a booking, that a dialog waits for.
#pragma once

#include <functional>
#include <optional>
#include <type_traits>

namespace sparewell::desktop {

/// Does the work on a thread of its own and returns when it has ended. Until then the window is
/// drawn and answers to the desktop, but takes no keys or clicks: another program may hold the
/// clinic file for some seconds, and a large one takes its time. `work` must not touch the window,
/// and owns what it reads of the window's state, which may change meanwhile.
/// Throws what the work throws. Call in the window's thread.
void do_aside(const std::function<void()>& work);

/// The same for work that answers something.
template <class Work>
[[nodiscard]] auto aside(const Work& work) {
  std::optional<std::invoke_result_t<const Work&>> answer;
  do_aside([&] { answer.emplace(work()); });
  return *std::move(answer);
}

}  // namespace sparewell::desktop
