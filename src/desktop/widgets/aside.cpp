#include "desktop/widgets/aside.hpp"

#include <chrono>
#include <exception>
#include <future>
#include <memory>
#include <thread>

#include <wx/app.h>
#include <wx/evtloop.h>
#include <wx/utils.h>
#include <wx/weakref.h>
#include <wx/window.h>

namespace sparewell::desktop {
namespace {

/// Nearly all work ends sooner, and is not worth turning the window grey for.
constexpr std::chrono::milliseconds unnoticed{50};

/// Lets the window be drawn until the loop is told to end. Where the keys went before, they go
/// again afterwards.
void keep_drawing(wxGUIEventLoop& loop) {
  const wxWeakRef<wxWindow> focused{wxWindow::FindFocus()};
  {
    const wxBusyCursor busy;
    const wxWindowDisabler nothing_else;
    loop.Run();
  }
  if (focused && wxWindow::FindFocus() != focused.get()) focused->SetFocus();
}

}  // namespace

void do_aside(const std::function<void()>& work) {
  std::promise<void> promise;
  auto ended = promise.get_future();
  const auto loop = std::make_shared<wxGUIEventLoop>();
  const std::jthread thread{[&] {
    try {
      work();
      promise.set_value();
    } catch (...) {
      promise.set_exception(std::current_exception());
    }
    wxTheApp->CallAfter([waiting = std::weak_ptr{loop}] {
      // Gone where the work ended sooner.
      if (const auto still = waiting.lock()) still->ScheduleExit();
    });
  }};
  if (ended.wait_for(unnoticed) == std::future_status::timeout) keep_drawing(*loop);
  ended.get();
}

}  // namespace sparewell::desktop
