#include "desktop/widgets/wrapped_label.hpp"

#include <utility>

#include <gtk/gtk.h>
#include <wx/sizer.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {

WrappedLabel::WrappedLabel(wxWindow* parent, const std::string& text)
    : wxStaticText{parent, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxST_NO_AUTORESIZE} {
  // The toolkit's own breaks lines by measuring each of them by itself, which was felt where a
  // whole page is shown anew.
  gtk_label_set_line_wrap(GTK_LABEL(GetHandle()), TRUE);
  gtk_label_set_line_wrap_mode(GTK_LABEL(GetHandle()), PANGO_WRAP_WORD_CHAR);
  set_text(text);
}

void WrappedLabel::set_text(const std::string& text) {
  auto words = to_wx(text);
  Show(!words.empty());
  if (words == GetLabelText()) return;
  SetLabelText(words);
  measure_again();
}

void WrappedLabel::wrap_to(int width) {
  // Less than the longest words is the width of what has not been laid out yet.
  if (width == width_ || width < FromDIP(80)) return;
  width_ = width;
  measure_again();
}

void WrappedLabel::measure_again() {
  InvalidateBestSize();
}

wxSize WrappedLabel::DoGetBestSize() const {
  // As long as it has no width, a line for each of its own.
  constexpr int unbroken = 100000;
  int height = 0;
  gtk_widget_get_preferred_height_for_width(GetHandle(), width_ > 0 ? width_ : unbroken, nullptr,
                                            &height);
  return {FromDIP(20), height};
}

void keep_wrapped(wxWindow& column, std::vector<WrappedLabel*> labels, int margin) {
  column.Bind(wxEVT_SIZE, [&column, labels = std::move(labels), margin](wxSizeEvent& event) {
    for (auto* label : labels) label->wrap_to(column.GetClientSize().x - margin);
    event.Skip();
  });
}

}  // namespace sparewell::desktop
