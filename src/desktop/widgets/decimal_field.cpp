#include "desktop/widgets/decimal_field.hpp"

#include <algorithm>
#include <string>

#include <gtk/gtk.h>
#include <wx/spinctrl.h>

#include "clinic/say.hpp"

namespace sparewell::desktop {
namespace {

gboolean write_number(GtkSpinButton* field, gpointer) {
  const auto text = saying::fill("{:.{}f}", saying::Decimal{gtk_spin_button_get_value(field)},
                                 gtk_spin_button_get_digits(field));
  if (text != gtk_entry_get_text(GTK_ENTRY(field))) {
    gtk_entry_set_text(GTK_ENTRY(field), text.c_str());
  }
  return TRUE;
}

/// What is no number leaves it as it was.
gint read_number(GtkSpinButton* field, gdouble* number, gpointer) {
  std::string text = gtk_entry_get_text(GTK_ENTRY(field));
  std::ranges::replace(text, ',', '.');
  char* end = nullptr;
  *number = g_ascii_strtod(text.c_str(), &end);
  if (text.empty() || *end != '\0') *number = gtk_spin_button_get_value(field);
  return TRUE;
}

}  // namespace

void show_own_decimals(wxSpinCtrlDouble& field) {
  auto* spin = GTK_SPIN_BUTTON(field.GetHandle());
  // Numeric fields take no other sign than that of the computer's locale.
  gtk_spin_button_set_numeric(spin, FALSE);
  g_signal_connect(spin, "output", G_CALLBACK(write_number), nullptr);
  g_signal_connect(spin, "input", G_CALLBACK(read_number), nullptr);
  gtk_spin_button_update(spin);
}

}  // namespace sparewell::desktop
