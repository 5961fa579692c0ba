import { ButtonForm } from '../../../../_forms/button-form';
import type { FilmingDay } from '#lib/episode/day-schema';
import { appointmentWords } from '#lib/shoot/step-words';
import { clockTyped } from '#lib/units/read-typed';
import { addAppointment, removeAppointment, saveAppointment } from '../times-actions';
import { AppointmentForm } from './appointment-form';
import { Adding } from './part';
import { Row } from './row';
import { newRow, revOf, rowHref, standsOpen, type DayPage } from './view';

type Appointment = FilmingDay['appointments'][number];

/** What has a fixed time on this day, whatever is filmed. */
export function Appointments({ page }: { readonly page: DayPage }) {
  const { day, file } = page;
  const { appointments } = day;
  const row = newRow('appointment', day.id);
  const open = standsOpen(page, [row, ...appointments.map(({ id }) => id)]);
  return (
    <details open={open}>
      <summary className="link min-h-14 content-center">
        Appointments of the day: {appointments.length === 0 ? 'none' : appointments.length}
      </summary>
      <ul>
        {appointments.map((appointment) => (
          <AppointmentRow key={appointment.id} page={page} appointment={appointment} />
        ))}
      </ul>
      <Adding page={page} row={row} words="Add an appointment" to="this day" heading="h2">
        <AppointmentForm
          id={row}
          action={addAppointment}
          hidden={{ episodeId: file.episode.id, dayId: day.id }}
          appointment={{ title: '', start: '', end: '', hands: true }}
          submit="Add the appointment"
          cancelHref={rowHref(page, row)}
        />
      </Adding>
    </details>
  );
}

function AppointmentRow({
  page,
  appointment,
}: {
  readonly page: DayPage;
  readonly appointment: Appointment;
}) {
  const ids = {
    episodeId: page.file.episode.id,
    dayId: page.day.id,
    appointmentId: appointment.id,
    rev: revOf(page, appointment.id),
  };
  return (
    <Row
      page={page}
      id={appointment.id}
      title={appointment.title}
      note={appointmentWords(appointment)}
    >
      <AppointmentForm
        id={`appointment-${appointment.id}`}
        action={saveAppointment}
        hidden={ids}
        appointment={{
          title: appointment.title,
          start: clockTyped(appointment.startMin),
          end: clockTyped(appointment.endMin),
          hands: appointment.hands,
        }}
        submit="Save the appointment"
        cancelHref={rowHref(page, appointment.id)}
      />
      <ButtonForm action={removeAppointment} values={ids} tone="hand" size="usual">
        Take the appointment out
      </ButtonForm>
    </Row>
  );
}
