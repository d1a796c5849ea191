#include "desktop/widgets/wrapped_label.hpp"

#include <utility>

#include <wx/sizer.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {

WrappedLabel::WrappedLabel(wxWindow* parent, const std::string& text)
    : wxStaticText{parent, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_NO_AUTORESIZE} {
  set_text(text);
}

void WrappedLabel::set_text(const std::string& text) {
  auto words = to_wx(text);
  Show(!words.empty());
  // Breaking lines takes long enough to be felt where a whole page is shown anew.
  if (words == text_) return;
  text_ = std::move(words);
  wrap();
}

void WrappedLabel::wrap_to(int width) {
  if (width == width_) return;
  width_ = width;
  wrap();
}

void WrappedLabel::wrap() {
  SetLabelText(text_);
  if (width_ > 0) Wrap(width_);
  // The toolkit remembers the height of the text before.
  InvalidateBestSize();
  SetMinSize(wxDefaultSize);
  SetMinSize({FromDIP(20), GetBestSize().y});
}

void keep_wrapped(wxWindow& column, std::vector<WrappedLabel*> labels, int margin) {
  column.Bind(wxEVT_SIZE, [&column, labels = std::move(labels), margin](wxSizeEvent& event) {
    for (auto* label : labels) label->wrap_to(column.GetClientSize().x - margin);
    event.Skip();
  });
}

}  // namespace sparewell::desktop
