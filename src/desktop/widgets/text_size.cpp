#include "desktop/widgets/text_size.hpp"

#include <gtk/gtk.h>

#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/layout_memory.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/work_bar.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {
namespace {

int times_applied = 0;

}  // namespace

void apply_text_size(int percent) {
  ++times_applied;
  // Everything that draws text goes by the resolution of text, pictures included; no widget has to
  // be given a font of its own.
  auto* settings = gtk_settings_get_default();
  static const int usual = [&] {
    int resolution = 0;
    g_object_get(settings, "gtk-xft-dpi", &resolution, nullptr);
    return resolution > 0 ? resolution : 96 * PANGO_SCALE;
  }();
  g_object_set(settings, "gtk-xft-dpi", usual * percent / 100, nullptr);
}

void measure_again(wxWindow& window) {
  for (auto* child : window.GetChildren()) measure_again(*child);
  window.InvalidateBestSize();
  if (auto* table = dynamic_cast<TableView*>(&window)) table->measure_again();
  if (auto* bar = dynamic_cast<WorkBar*>(&window)) bar->measure_again();
  if (auto* label = dynamic_cast<WrappedLabel*>(&window)) {
    label->measure_again();
  } else if (auto* text = dynamic_cast<wxStaticText*>(&window); text && text->GetMinWidth() > 0) {
    text->SetMinSize({text->GetTextExtent(text->GetLabelText()).x + text->FromDIP(2), -1});
  }
  if (auto* box = dynamic_cast<FindBox*>(&window)) box->measure_again();
  // Texts are wrapped again, and borders keep their share.
  if (!window.GetChildren().empty()) window.SendSizeEvent();
  window.Refresh();
}

bool text_size_was_changed() {
  // The first time is what was remembered.
  return times_applied > 1;
}

double text_scale() {
  return window_layout().text_percent / 100.0;
}

}  // namespace sparewell::desktop
