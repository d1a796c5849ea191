#include "desktop/widgets/pane_book.hpp"

#include <wx/notebook.h>
#include <wx/panel.h>
#include <wx/sizer.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

/// The page of the book; it shows its one child when it comes in front the first time.
class Room : public wxPanel {
 public:
  using wxPanel::wxPanel;
  void hold(wxWindow* pane) {
    pane_ = pane;
    pane_->Hide();
    auto* sizer = new wxBoxSizer{wxVERTICAL};
    sizer->Add(pane_, wxSizerFlags{1}.Expand());
    SetSizer(sizer);
  }
  void show_pane() {
    if (pane_->IsShown()) return;
    pane_->Show();
    Layout();
  }
  [[nodiscard]] wxWindow* pane() const { return pane_; }

 private:
  wxWindow* pane_ = nullptr;
};

}  // namespace

wxWindow* room_for_pane(wxNotebook& book) {
  return new Room{&book};
}

void add_pane(wxNotebook& book, wxWindow* pane, const std::string& title) {
  auto* room = dynamic_cast<Room*>(pane->GetParent());
  wxCHECK_RET(room != nullptr, "the pane is not in a room of the book");
  room->hold(pane);
  book.Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [&book, room](wxBookCtrlEvent& event) {
    event.Skip();
    if (event.GetEventObject() == &book && book.GetCurrentPage() == room) room->show_pane();
  });
  book.AddPage(room, to_wx(title));
  if (book.GetCurrentPage() == room) room->show_pane();
}

wxWindow* pane_in_front(const wxNotebook& book) {
  const auto* room = dynamic_cast<const Room*>(book.GetCurrentPage());
  return room == nullptr ? nullptr : room->pane();
}

}  // namespace sparewell::desktop
