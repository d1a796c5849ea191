#include "desktop/widgets/step_keys.hpp"

namespace sparewell::desktop {

void on_step_key(wxWindow& window, wxKeyEvent& event, const std::function<void(int)>& step) {
  if (event.GetKeyCode() == WXK_DOWN) {
    step(1);
  } else if (event.GetKeyCode() == WXK_UP) {
    step(-1);
  } else if (event.GetKeyCode() == WXK_TAB) {
    window.Navigate(event.ShiftDown() ? wxNavigationKeyEvent::IsBackward
                                      : wxNavigationKeyEvent::IsForward);
  } else {
    event.Skip();
  }
}

}  // namespace sparewell::desktop
