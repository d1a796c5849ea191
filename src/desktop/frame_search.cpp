// Searching everything, and scanning wherever the focus is.
#include <cctype>

#include <gdk/gdkkeysyms.h>
#include <wx/choice.h>
#include <wx/notebook.h>
#include <wx/slider.h>
#include <wx/spinctrl.h>
#include <wx/textctrl.h>

#include "desktop/main_frame.hpp"
#include "desktop/pages/page.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/search_bar.hpp"
#include "exchange/barcode/gs1_elements.hpp"

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

/// The letter or sign that a key writes, with Shift and Caps Lock; the separator of GS1, which
/// scanners send as Ctrl+]; 0 for any other key.
char written(const wxKeyEvent& event) {
  if (event.AltDown()) return 0;
  // The key codes of the toolkit leave out Shift: they say 9 where ( is typed.
  auto sign = event.GetRawKeyCode();
  if (sign >= GDK_KEY_KP_0 && sign <= GDK_KEY_KP_9) sign = '0' + (sign - GDK_KEY_KP_0);
  if (event.ControlDown()) return sign == ']' ? exchange::group_separator : char{0};
  return sign >= ' ' && sign <= '~' ? static_cast<char>(sign) : char{0};
}

/// Keys that write nothing by themselves and are held down for others.
bool is_held(const wxKeyEvent& event) {
  const auto key = event.GetKeyCode();
  return key == WXK_SHIFT || key == WXK_CONTROL || key == WXK_RAW_CONTROL || key == WXK_ALT ||
         key == WXK_CAPITAL || key == WXK_NUMLOCK;
}

bool begins_search(char key) {
  return std::isalnum(static_cast<unsigned char>(key)) != 0 || key == ']' || key == '(' ||
         key == '+';
}

/// What a scanner has typed into a field of a page goes out of it again.
void take_out(wxWindow* focus, const std::string& scanned) {
  auto* field = dynamic_cast<wxTextEntry*>(focus);
  if (field == nullptr || !field->IsEditable()) return;
  auto typed = to_wx(scanned);
  // A field does not take the separator.
  typed.Replace(wxString{exchange::group_separator}, wxString{});
  const auto end = field->GetInsertionPoint();
  const auto begin = end - static_cast<long>(typed.length());
  if (begin >= 0 && field->GetRange(begin, end) == typed) field->Remove(begin, end);
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
  if (!day_ || is_held(event)) return false;
  auto* focus = wxWindow::FindFocus();
  const auto* field = search_->field();
  const bool searching = focus == field || (focus != nullptr && focus->GetParent() == field);
  const desk::ScanBurst::Moment at{event.GetTimestamp()};
  if (event.GetKeyCode() == WXK_RETURN || event.GetKeyCode() == WXK_NUMPAD_ENTER) {
    const auto scanned = scan_.entered(at);
    if (scanned.empty()) {
      if (searching) search_->enter();
      return searching;
    }
    if (!searching) take_out(focus, scanned);
    search_->scan(scanned);
    return true;
  }
  const auto key = written(event);
  if (key == 0) {
    scan_.broken();
    return false;
  }
  scan_.key(key, at);
  if (searching || takes_letters(focus) || !begins_search(key)) return false;
  search_->begin_with(key);
  return true;
}

}  // namespace sparewell::desktop
