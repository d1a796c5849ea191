#include "desktop/widgets/accessible.hpp"

#include <gtk/gtk.h>
#include <wx/dataview.h>
#include <wx/window.h>

namespace sparewell::desktop {
namespace {

/// The GTK widget that has the focus when the control has it.
GtkWidget* inner_widget(wxWindow& window) {
  if (auto* list = dynamic_cast<wxDataViewCtrl*>(&window)) return list->GtkGetTreeView();
  auto* widget = static_cast<GtkWidget*>(window.GetHandle());
  // A text field of several lines lies inside a scrolled window.
  if (GTK_IS_SCROLLED_WINDOW(widget)) {
    if (auto* child = gtk_bin_get_child(GTK_BIN(widget))) return child;
  }
  return widget;
}

}  // namespace

void set_accessible_name(wxWindow& window, const std::string& name,
                         const std::string& description) {
  auto* accessible = gtk_widget_get_accessible(inner_widget(window));
  if (!accessible) return;
  atk_object_set_name(accessible, name.c_str());
  if (!description.empty()) atk_object_set_description(accessible, description.c_str());
}

}  // namespace sparewell::desktop
