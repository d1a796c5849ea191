#include "desktop/self_report.hpp"

#include <algorithm>

#include <wx/anybutton.h>
#include <wx/button.h>
#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/dataview.h>
#include <wx/radiobut.h>
#include <wx/scrolwin.h>
#include <wx/stattext.h>
#include <wx/toplevel.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

constexpr std::chrono::milliseconds tick{20};
/// Long enough for a new page to have been laid out.
constexpr std::chrono::milliseconds between_looks{400};
/// Rounding, and letters that lean out of their box.
constexpr int tolerance = 2;
/// Of a column heading, beside its text.
constexpr int heading_margin = 8;

/// Before main begins.
const auto program_began = std::chrono::steady_clock::now();

bool shows_words(const wxWindow& window) {
  return dynamic_cast<const wxStaticText*>(&window) != nullptr ||
         dynamic_cast<const wxAnyButton*>(&window) != nullptr ||
         dynamic_cast<const wxCheckBox*>(&window) != nullptr ||
         dynamic_cast<const wxRadioButton*>(&window) != nullptr ||
         dynamic_cast<const wxChoice*>(&window) != nullptr;
}

bool may_be_cut(const wxWindow& window) {
  // Those that end in three dots by intent; their whole text is in a tooltip.
  constexpr long dots = wxST_ELLIPSIZE_START | wxST_ELLIPSIZE_MIDDLE | wxST_ELLIPSIZE_END;
  return dynamic_cast<const wxStaticText*>(&window) != nullptr &&
         (window.GetWindowStyleFlag() & dots) != 0;
}

bool scrolls(const wxWindow& window) {
  return dynamic_cast<const wxScrolledWindow*>(&window) != nullptr ||
         window.HasScrollbar(wxVERTICAL) || window.HasScrollbar(wxHORIZONTAL);
}

void look_at_headings(const wxDataViewCtrl& list, std::vector<std::string>& cut) {
  for (unsigned i = 0; i < list.GetColumnCount(); ++i) {
    const auto* column = list.GetColumn(i);
    if (column->IsHidden()) continue;
    const int wanted = list.GetTextExtent(column->GetTitle()).x + heading_margin;
    if (wanted > column->GetWidth() + tolerance) {
      cut.push_back("heading " + from_wx(column->GetTitle()));
    }
  }
}

bool reaches_beyond(const wxWindow& child) {
  if (!child.IsShown() || child.IsTopLevel() || !shows_words(child)) return false;
  const auto& parent = *child.GetParent();
  const auto room = parent.GetClientSize();
  // A page that has not been laid out yet is smaller than any word.
  if (child.GetLabel().empty() || scrolls(parent) || room.x < parent.FromDIP(100)) return false;
  const auto place = child.GetRect();
  return place.GetRight() > room.x + tolerance || place.GetBottom() > room.y + tolerance;
}

void look_at(const wxWindow& window, std::vector<std::string>& cut) {
  if (!window.IsShownOnScreen()) return;
  if (const auto* list = dynamic_cast<const wxDataViewCtrl*>(&window)) {
    return look_at_headings(*list, cut);
  }
  if (shows_words(window) && !window.GetLabel().empty() && !may_be_cut(window)) {
    const auto wanted = window.GetBestSize();
    const auto given = window.GetSize();
    if (wanted.x > given.x + tolerance || wanted.y > given.y + tolerance) {
      cut.push_back(from_wx(window.GetLabel()));
    }
  }
  for (const auto* child : window.GetChildren()) {
    if (reaches_beyond(*child)) cut.push_back("beyond the edge: " + from_wx(child->GetLabel()));
    if (!child->IsTopLevel()) look_at(*child, cut);
  }
}

}  // namespace

std::vector<std::string> cut_texts(const wxWindow& window) {
  std::vector<std::string> cut;
  look_at(window, cut);
  return cut;
}

SelfReport::SelfReport(const std::string& file)
    : out_{file}, last_tick_{Clock::now()}, last_look_{Clock::now()} {
  Start(static_cast<int>(tick.count()));
}

void SelfReport::Notify() {
  const auto now = Clock::now();
  const auto gap = std::chrono::duration_cast<std::chrono::milliseconds>(now - last_tick_ - tick);
  const auto* active = wxGetActiveWindow();
  const auto* top =
      active != nullptr ? wxGetTopLevelParent(const_cast<wxWindow*>(active)) : nullptr;
  const auto title = top != nullptr ? from_wx(top->GetLabel()) : std::string{};
  if (gap > answers_within) out_ << "slow\t" << title << '\t' << gap.count() << std::endl;
  if (!usable_ && title.ends_with(" - Sparewell")) {
    usable_ = true;
    const auto took = std::chrono::duration_cast<std::chrono::milliseconds>(now - program_began);
    out_ << "usable\t" << title << '\t' << took.count() << std::endl;
  }
  if (now - last_look_ > between_looks) {
    look();
    last_look_ = Clock::now();
  }
  last_tick_ = Clock::now();
}

void SelfReport::look() {
  std::set<std::string> seen;
  for (const auto* window : wxTopLevelWindows) {
    if (!window->IsShownOnScreen()) continue;
    const auto title = from_wx(window->GetLabel());
    for (const auto& text : cut_texts(*window)) {
      auto line = "cut\t" + title + '\t' + text;
      std::ranges::replace(line, '\n', ' ');
      // Cut twice in a row: what is just being laid out does not count.
      if (seen_.contains(line) && told_.insert(line).second) out_ << line << std::endl;
      seen.insert(std::move(line));
    }
  }
  seen_ = std::move(seen);
}

}  // namespace sparewell::desktop
