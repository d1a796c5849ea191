#include "desktop/widgets/split.hpp"

#include <memory>

#include "desktop/widgets/layout_memory.hpp"

namespace sparewell::desktop {

wxSplitterWindow* make_split(wxWindow* parent) {
  auto* split = new wxSplitterWindow{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                                     wxSP_LIVE_UPDATE | wxSP_NOBORDER};
  split->SetMinimumPaneSize(split->FromDIP(160));
  return split;
}

void share_room(wxSplitterWindow& split, double share, const std::string& name) {
  const auto room = [&split] {
    const auto size = split.GetClientSize();
    return split.GetSplitMode() == wxSPLIT_VERTICAL ? size.x : size.y;
  };
  const auto& borders = window_layout().borders;
  const auto remembered = borders.find(name);
  auto kept = std::make_shared<double>(remembered == borders.end() ? share : remembered->second);
  split.Bind(wxEVT_SIZE, [&split, kept, room](wxSizeEvent& event) {
    event.Skip();
    if (split.IsSplit() && room() > 2 * split.GetMinimumPaneSize()) {
      split.SetSashPosition(static_cast<int>(room() * *kept));
    }
  });
  // Only a hand on the border changes the share; sizes change it by rounding otherwise.
  split.Bind(wxEVT_SPLITTER_SASH_POS_CHANGED, [kept, room, name](wxSplitterEvent& event) {
    event.Skip();
    if (room() <= 0) return;
    *kept = static_cast<double>(event.GetSashPosition()) / room();
    window_layout().borders[name] = *kept;
  });
}

}  // namespace sparewell::desktop
