// Searching everything, and scanning wherever the focus is.
#include <cctype>

#include <wx/choice.h>
#include <wx/notebook.h>
#include <wx/slider.h>
#include <wx/spinctrl.h>
#include <wx/textctrl.h>

#include "desktop/main_frame.hpp"
#include "desktop/pages/page.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/search_bar.hpp"

namespace sparewell::desktop {
namespace {

/// What does something of its own with letters and digits.
bool takes_letters(const wxWindow* window) {
  return dynamic_cast<const wxTextEntry*>(window) != nullptr ||
         dynamic_cast<const wxSpinCtrl*>(window) != nullptr ||
         dynamic_cast<const wxSpinCtrlDouble*>(window) != nullptr ||
         dynamic_cast<const wxChoice*>(window) != nullptr ||
         dynamic_cast<const wxSlider*>(window) != nullptr;
}

/// The key as it is written; keys are told in capitals here.
char written(const wxKeyEvent& event) {
  const auto key = static_cast<char>(event.GetUnicodeKey());
  return event.ShiftDown() ? key : static_cast<char>(std::tolower(static_cast<unsigned char>(key)));
}

bool begins_search(char key) {
  return std::isalnum(static_cast<unsigned char>(key)) != 0 || key == ']' || key == '(' ||
         key == '+';
}

/// What a scanner has typed into a field of a page goes out of it again; as it stood there, because
/// keys are told in capitals.
std::string take_out(wxWindow* focus, const std::string& scanned) {
  auto* field = dynamic_cast<wxTextEntry*>(focus);
  if (field == nullptr) return scanned;
  const auto value = field->GetValue();
  const auto length = scanned.size();
  if (value.length() < length) return scanned;
  const auto typed = value.Right(length);
  if (!typed.IsSameAs(to_wx(scanned), false)) return scanned;
  field->SetValue(value.Left(value.length() - length));
  return from_wx(typed);
}

}  // namespace

void MainFrame::make_search() {
  search_ = std::make_unique<SearchBar>(
      body_, [this](const desk::Destination& there) { go_to(there); },
      [this] {
        if (book_->IsShown()) current_page()->SetFocus();
      });
}

void MainFrame::search_everything() {
  if (book_->IsShown()) search_->take_focus();
}

bool MainFrame::take_search_key(const wxKeyEvent& event) {
  if (!day_) return false;
  auto* focus = wxWindow::FindFocus();
  const auto* field = search_->field();
  const bool searching = focus == field || (focus != nullptr && focus->GetParent() == field);
  const auto key = event.GetUnicodeKey();
  const desk::ScanBurst::Moment at{event.GetTimestamp()};
  if (event.GetKeyCode() == WXK_RETURN || event.GetKeyCode() == WXK_NUMPAD_ENTER) {
    const auto scanned = scan_.entered(at);
    if (searching || scanned.empty()) return false;
    search_->scan(take_out(focus, scanned));
    return true;
  }
  if (event.ControlDown() || event.AltDown() || key <= ' ' || key > '~') {
    scan_.broken();
    return false;
  }
  scan_.key(static_cast<char>(key), at);
  if (searching || takes_letters(focus) || !begins_search(written(event))) return false;
  search_->begin_with(written(event));
  return true;
}

}  // namespace sparewell::desktop
