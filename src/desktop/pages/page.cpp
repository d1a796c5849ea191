#include "desktop/pages/page.hpp"

#include <wx/sizer.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {

void Page::show_or_wait(const desk::DayPtr& day) {
  if (!day->worked_out() && !shows_records()) return wait();
  stop_waiting();
  show(day);
}

void Page::put_aside() {
  for (auto* child : GetChildren()) {
    if (child->IsShown()) put_aside_.push_back(child);
    child->Hide();
  }
}

void Page::wait() {
  if (waiting_ != nullptr) return;
  if (put_aside_.empty()) put_aside();
  waiting_ = new wxStaticText{
      this, wxID_ANY,
      to_wx(said("Being worked out from the records. The other pages can be used meanwhile."))};
  waiting_->SetPosition(FromDIP(wxPoint{16, 16}));
}

void Page::stop_waiting() {
  if (waiting_ != nullptr) waiting_->Destroy();
  waiting_ = nullptr;
  if (put_aside_.empty()) return;
  for (auto* child : put_aside_) child->Show();
  put_aside_.clear();
  Layout();
}

}  // namespace sparewell::desktop
