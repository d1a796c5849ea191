#include "desktop/widgets/layout_memory.hpp"

#include <wx/checkbox.h>
#include <wx/choice.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

/// As if it had been done by hand.
void tell(wxControl& control, wxEventType type, int value) {
  wxCommandEvent event{type, control.GetId()};
  event.SetEventObject(&control);
  event.SetInt(value);
  control.ProcessWindowEvent(event);
}

}  // namespace

desk::WindowLayout& window_layout() {
  static desk::WindowLayout layout;
  return layout;
}

void remember_filter(wxCheckBox& box, const std::string& name) {
  box.Bind(wxEVT_CHECKBOX, [name](wxCommandEvent& event) {
    event.Skip();
    window_layout().filters[name] = event.IsChecked() ? "on" : "off";
  });
  const auto& filters = window_layout().filters;
  const auto kept = filters.find(name);
  if (kept == filters.end()) return;
  const bool on = kept->second == "on";
  if (on == box.GetValue()) return;
  box.SetValue(on);
  box.CallAfter([&box, on] { tell(box, wxEVT_CHECKBOX, on ? 1 : 0); });
}

void remember_filter(wxChoice& choice, const std::string& name) {
  choice.Bind(wxEVT_CHOICE, [&choice, name](wxCommandEvent& event) {
    event.Skip();
    window_layout().filters[name] = from_wx(choice.GetStringSelection());
  });
  const auto& filters = window_layout().filters;
  const auto kept = filters.find(name);
  if (kept == filters.end() || kept->second == from_wx(choice.GetStringSelection())) return;
  if (!choice.SetStringSelection(to_wx(kept->second))) return;
  choice.CallAfter([&choice] { tell(choice, wxEVT_CHOICE, choice.GetSelection()); });
}

}  // namespace sparewell::desktop
