#include "desktop/widgets/split.hpp"

#include <memory>

namespace sparewell::desktop {

wxSplitterWindow* make_split(wxWindow* parent) {
  auto* split = new wxSplitterWindow{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                     wxSP_LIVE_UPDATE | wxSP_NOBORDER};
  split->SetMinimumPaneSize(split->FromDIP(160));
  return split;
}

void share_room(wxSplitterWindow& split, double share) {
  const auto room = [&split] {
    const auto size = split.GetClientSize();
    return split.GetSplitMode() == wxSPLIT_VERTICAL ? size.x : size.y;
  };
  auto kept = std::make_shared<double>(share);
  split.Bind(wxEVT_SIZE, [&split, kept, room](wxSizeEvent& event) {
    event.Skip();
    if (split.IsSplit() && room() > 2 * split.GetMinimumPaneSize()) {
      split.SetSashPosition(static_cast<int>(room() * *kept));
    }
  });
  // Only a hand on the border changes the share; sizes change it by rounding otherwise.
  split.Bind(wxEVT_SPLITTER_SASH_POS_CHANGED, [kept, room](wxSplitterEvent& event) {
    event.Skip();
    if (room() > 0) *kept = static_cast<double>(event.GetSashPosition()) / room();
  });
}

}  // namespace sparewell::desktop
